package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.load.GuardOverride;
import boundwright.quantity.LengthUnit;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestScore;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.technique.FaultTick;
import boundwright.technique.LookRepository.SecondLook;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A coach with a phone watches: ticks on contacts, the guard, pain, a medical hold, and the pages that come of it. */
class WatchingSessionTest extends PhoneCase {
  @Test
  void aWholeSessionWithTicksOnContactsAnOverrideAndPain() {
    bench.settings().keep(new DayPlan("Much today", List.of(new Drill(Sequence.parse("RRL x2"), 4, 20, 3, true))));
    Athlete athlete = first();
    visit("/athlete/" + athlete.id());
    Locator guard = page.locator("#guard");
    assertThat(guard.locator("summary").first()).containsText(Pattern.compile("refused", Pattern.CASE_INSENSITIVE));
    assertThat(guard.locator("summary").first()).containsText("360 contacts");

    // a tap alone was not looked at; the next is called clean, although the guard refuses the session
    page.locator("#tap-IN").tap();
    assertThat(page.locator(".console .said")).containsText("Logged.");
    assertThat(newest(athlete).judged()).isFalse();
    page.locator(".judged label", new Page.LocatorOptions().setHasText("clean")).tap();
    page.locator("#tap-IN").tap();
    assertThat(page.locator(".console .said")).containsText("rep 2 today");
    Rep clean = newest(athlete);
    assertThat(clean.judged()).isTrue();
    assertThat(clean.faults()).isEmpty();

    // the second: the toe dangles on contact 4
    page.locator("#technique > summary").tap();
    Locator fault = page.locator("#technique li", new Page.LocatorOptions().setHasText("toe dangles"));
    assertThat(fault.locator(".on-contact")).isHidden();
    fault.getByLabel("toe dangles", new Locator.GetByLabelOptions().setExact(true)).check();
    assertThat(fault.locator(".on-contact")).isVisible();
    assertThat(page.locator(".judged .if-ticked")).isVisible();
    fault.locator(".on-contact label").nth(3).tap();
    page.locator("#tap-SHORT").tap();
    assertThat(page.locator(".console .say")).hasText("Say: Toe up, ankle like a board.");
    assertThat(page.locator(".cues")).containsText("look one contact earlier, at contact 3");
    assertThat(newest(athlete).faults()).containsExactly("toe-up@4");
    assertThat(page.locator("#technique")).hasAttribute("open", "");

    // nobody watches the next two
    page.locator("#tap-IN").tap();
    assertThat(page.locator(".cues")).hasCount(0);
    page.locator("#tap-IN").tap();
    assertThat(page.locator(".recent li").nth(1)).containsText("technique not looked at");
    assertThat(newest(athlete).judged()).isFalse();

    // the coach goes on against the guard, first without a reason
    guard.locator("summary").first().tap();
    Locator finding = page.locator("#guard .findings > li", new Page.LocatorOptions().setHasText("contacts in the session")).first();
    finding.getByText("Go on all the same").first().tap();
    finding.getByLabel("Because").fill("ok");
    finding.getByRole(AriaRole.BUTTON).tap();
    assertThat(page.locator("#override-error")).containsText("8 to 300 characters");
    finding.getByLabel("Because").fill("Easy standing bounds only");
    finding.getByRole(AriaRole.BUTTON).tap();
    assertThat(page.locator("#guard .kept").first()).containsText("Easy standing bounds only");
    List<GuardOverride> kept = bench.care().overrides(athlete.id(), 9);
    assertThat(kept).hasSize(1);
    assertThat(kept.get(0).reason()).isEqualTo("Easy standing bounds only");

    // pain
    page.locator(".tabs a", new Page.LocatorOptions().setHasText("Care")).tap();
    page.locator("section[aria-labelledby=pain-head] .eleven label").nth(4).tap();
    page.getByLabel("Where on the body").fill("left shin");
    page.getByText("Keep the pain").tap();
    assertThat(page.locator(".said")).containsText("Ask again next morning");
    page.locator(".tabs a", new Page.LocatorOptions().setHasText("Marks")).tap();
    page.locator("#guard > summary").tap();
    assertThat(page.locator("#guard")).containsText("Pain 4 of 10, left shin");
    complaints.removeIf(c -> c.contains("422"));
  }

  @Test
  void aCoachCannotLiftAMedicalHold() {
    Athlete athlete = first();
    visit("/athlete/" + athlete.id() + "/care");
    page.locator("section[aria-labelledby=pain-head] .eleven label").nth(3).tap();
    page.getByLabel("Where on the body").fill("right foot");
    page.getByText("Pain on one bony spot").tap();
    page.getByText("Keep the pain").tap();
    assertThat(page.locator(".said")).containsText("Stop and refer to licensed medical staff");
    visit("/athlete/" + athlete.id());
    assertThat(page.locator("#guard > summary")).containsText("On medical hold");
    page.locator("#guard > summary").tap();
    assertThat(page.locator("#guard")).containsText("A coach cannot lift it");
    assertThat(page.locator("#guard form")).hasCount(0);
    // a form made by hand is refused too
    Object status =
        page.evaluate(
            "async id => { const f = new URLSearchParams(new FormData(document.getElementById('log'))); f.set('rule', 'MEDICAL_HOLD');"
                + " f.set('reason', 'The athlete feels fine today'); return (await fetch('/athlete/' + id + '/override', {method: 'POST', body: f})).status; }",
            String.valueOf(athlete.id()));
    assertThat(status).isEqualTo(422);
    assertThat(bench.care().overrides(athlete.id(), 9)).isEmpty();
    // what happened can be logged all the same
    page.locator("#tap-IN").tap();
    assertThat(page.locator(".console .said")).containsText("Logged.");
    // the name alone does not end it
    visit("/athlete/" + athlete.id() + "/care");
    page.getByLabel("Name of the clinician").fill("Dr Sedge (invented)");
    page.getByText("End the hold").tap();
    assertThat(page.locator("#end-error")).containsText("name and a date, both");
    page.getByLabel("They allow bounding from").fill(LocalDate.now(bench.clock()).toString());
    page.getByText("End the hold").tap();
    assertThat(page.getByText("ended by Dr Sedge (invented)")).isVisible();
    complaints.removeIf(c -> c.contains("422"));
  }

  @Test
  void theSquadIsSortedByNeedAndTheLadderShowsWhatIsMissing() {
    Athlete athlete = first();
    bench.care().openHold(athlete.id(), new boundwright.load.LegCare.MedicalHold(0, LocalDate.now(bench.clock()), "medical staff", null, null));
    visit("/watch");
    assertThat(page.locator(".need h2").first()).containsText("should rest");
    assertThat(page.locator(".watch a").first()).containsText(athlete.name());
    visit("/athlete/" + athlete.id() + "/ready");
    assertThat(page.locator(".ladder")).hasCount(3);
    page.locator(".ladder summary").first().tap();
    assertThat(page.locator(".evidence").first().locator("li")).hasCount(8);
    page.locator(".ladder details").nth(1).locator("summary").tap();
    page.locator(".ladder").first().getByLabel("Because").fill("Did this rung all winter");
    page.locator(".ladder").first().getByText("Keep this decision").tap();
    assertThat(page.locator(".said")).containsText("Kept.");
    assertThat(page.getByText("Did this rung all winter").first()).isVisible();
  }

  @Test
  void everythingOfItWorksWithoutScripts() throws IOException {
    context.close();
    context =
        browser.newContext(
            new com.microsoft.playwright.Browser.NewContextOptions().setViewportSize(390, 844).setHasTouch(true).setJavaScriptEnabled(false));
    page = context.newPage();
    Athlete athlete = first();
    visit("/athlete/" + athlete.id());
    page.locator("#technique > summary").click();
    page.getByLabel("pops up", new Page.GetByLabelOptions().setExact(true)).check();
    page.getByLabel("pops up on contact 2", new Page.GetByLabelOptions().setExact(false)).first().check(new Locator.CheckOptions().setForce(true));
    page.locator("#tap-IN").click();
    assertThat(page.locator(".cues")).containsText("Run across it, hips tall.");
    assertThat(newest(athlete).faults()).containsExactly("hips-tall@2");
    byte[] pdf = Files.readAllBytes(page.waitForDownload(() -> page.getByText("report", new Page.GetByTextOptions().setExact(true)).click()).path());
    assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
  }

  @Test
  void noNewPageScrollsSidewaysAndEveryTargetIsLargeEnough() {
    fillIn();
    long id = first().id();
    List<String> paths =
        List.of(
            "/watch", "/athlete/" + id, "/athlete/" + id + "/care", "/athlete/" + id + "/ready", "/athlete/" + id + "/load",
            "/athlete/" + id + "/technique", "/athlete/" + id + "/second", "/athlete/" + id + "/tests", "/athlete/" + id + "/tests?kind=TIMED_RUN_UP",
            "/settings/guard", "/settings", "/sources");
    for (LengthUnit unit : LengthUnit.values()) {
      assertFits(paths, unit, "document.querySelectorAll('.ticks > li > label > input').forEach(i => { i.checked = true; })");
    }
  }

  /** Gives the first athlete something on every page. */
  private void fillIn() {
    Athlete athlete = first();
    LocalDate today = LocalDate.now(bench.clock());
    for (int day = 0; day < 5; day++) {
      for (int rep = 0; rep < 4; rep++) {
        List<String> faults = rep == 0 ? List.of("toe-up@" + (2 + day % 4)) : List.of();
        bench
            .logbook()
            .log(
                new Rep(
                    0, athlete.id(), today.minusDays(3L * day), Sequence.parse("RRL RRL"), athlete.rung(), Surface.GRASS, List.of(),
                    12.0 + 0.1 * rep, null, null, true, faults));
      }
    }
    bench.care().addPain(athlete.id(), new boundwright.load.LegCare.Pain(0, today.minusDays(1), "left shin", 4, null, true));
    bench.care().keep(new boundwright.load.rating.SessionRating(athlete.id(), today, 7, 75));
    for (TestKind kind : List.of(TestKind.STANDING_TRIPLE, TestKind.SINGLE_LEG_LEFT, TestKind.SINGLE_LEG_RIGHT)) {
      for (int week = 0; week < 4; week++) {
        for (Athlete a : bench.athletes().all()) {
          double score = (kind == TestKind.STANDING_TRIPLE ? 6.5 : 9.5) + 0.1 * a.id() + 0.07 * ((week * 7L + a.id() * 3) % 5);
          bench.tests().add(new TestScore(0, a.id(), kind, 0, score, null, today.minusWeeks(week), TestProtocol.usual(kind, Surface.TRACK)));
        }
      }
    }
    for (Rep rep : bench.reps().recent(athlete.id(), 8)) {
      bench.looks().keep(new SecondLook(rep.id(), "KM", rep.id() % 2 == 0 ? List.of(FaultTick.of("toe-up")) : List.of()));
    }
  }

  private Rep newest(Athlete athlete) {
    return bench.reps().recent(athlete.id(), 1).get(0);
  }
}
