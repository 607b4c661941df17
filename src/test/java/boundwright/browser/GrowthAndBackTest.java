package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import boundwright.account.Role;
import boundwright.athlete.Athlete;
import boundwright.athlete.growth.Measurement;
import boundwright.footfall.Foot;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.web.WebServer;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;

/** A coach enters heights and brings a leg back, by hand; and who may see that. The invented clinician's name is invented. */
class GrowthAndBackTest extends OneProgramCase {
  private static final Pattern BETWEEN = Pattern.compile("Grows about [\\d.]+ cm a year; between ([\\d.]+) and ([\\d.]+) nine times in ten");

  @Test
  void aHeightIsTypedAndHowFastAndWhenAgainIsSaid() {
    Athlete ada = added("Ada Fenn");
    visit("/athlete/" + ada.id() + "/care");
    page.getByText("Heights, and how fast").tap();
    assertThat(page.locator("main")).containsText("No height is kept yet.");
    height("tall", 17);
    assertThat(page.locator("#height-error")).containsText("The height 'tall' cannot be read. Write it as 162.4 (cm)");
    assertThat(page.locator("#height")).hasValue("tall");
    assertThat(page.locator("#height-date")).hasValue(today().minusWeeks(17).toString());
    refused();
    height("162.4", 17);
    assertThat(page.locator(".said")).hasText("The height is kept.");
    height("165.1", 0);
    Locator growth = page.locator("section[aria-labelledby=growth-head]");
    assertThat(growth).containsText(BETWEEN);
    assertThat(growth).containsText("Measure again on");
    Matcher said = BETWEEN.matcher(growth.textContent());
    Assertions.assertThat(said.find()).isTrue();
    // 2.7 cm in 17 weeks of a year of 52.18 (worked) lie between what is said
    Assertions.assertThat(2.7 / 17 * 52.18).isBetween(Double.valueOf(said.group(1)), Double.valueOf(said.group(2)));
    assertThat(growth.locator("svg.growth-strip")).isVisible();
    page.getByText("2 measurements").tap();
    page.getByLabel("Remove 165.1 cm", new Page.GetByLabelOptions().setExact(false)).tap();
    assertThat(page.locator(".said")).hasText("The measurement is taken out.");
    assertThat(page.getByText("1 measurement")).isVisible();
  }

  /** With the longest figures that a window has on a runway of 30 m. */
  @Test
  void onTheCardNoFigureRunsIntoTheNext() {
    Athlete cy = added("Cy Reedmace");
    for (int width : new int[] {360, 390, 1366}) {
      page.setViewportSize(width, 800);
      visit("/athlete/" + cy.id() + "/card");
      Assertions.assertThat(page.locator(".card-figure").count()).isGreaterThan(2);
      Object out =
          page.evaluate(
              "() => [...document.querySelectorAll('.card-figures:not(.card-figures-small) .card-figure')].filter(f => {"
                  + " f.querySelector('.card-value').textContent = '28.76\u201329.88 m'; const r = document.createRange(); r.selectNodeContents(f);"
                  + " return r.getBoundingClientRect().right > f.getBoundingClientRect().right + 1; }).map(f => f.textContent)");
      Assertions.assertThat((List<?>) out).as("%d wide", width).isEmpty();
    }
  }

  /** By keys: Enter in the field sends. */
  private void height(String written, int weeksAgo) {
    page.locator("#height-date").fill(today().minusWeeks(weeksAgo).toString());
    page.locator("#height").fill("");
    page.locator("#height").pressSequentially(written);
    page.keyboard().press("Enter");
  }

  @Test
  void aWayBackBeginsWhenTheHoldHasEndedGoesOnWhenItIsEarnedAndBackByPain() {
    Athlete bo = added("Bo Lark");
    String back = "/athlete/" + bo.id() + "/back";
    bench.care().openHold(bo.id(), new MedicalHold(0, today().minusDays(20), "set by a physician (invented)", null, null));
    visit(back);
    assertThat(page.locator("#hold-head")).containsText("On medical hold since");
    assertThat(page.locator("#begin-by")).hasCount(0);
    page.getByText("To the medical hold").tap();
    page.getByLabel("Name of the clinician").fill("Dr Sedge (invented)");
    page.getByLabel("They allow bounding from").fill(today().toString());
    page.getByText("End the hold").tap();
    page.getByText("Way back of a leg after days off").tap();

    begin("left", "95");
    assertThat(page.locator("#begin-error")).containsText("10 to 90 %");
    assertThat(page.getByLabel("Start, % of the former week")).hasValue("95");
    assertThat(page.locator("input[name=leg][value=LEFT]")).isChecked();
    assertThat(page.locator("#begin-former")).hasValue("60");
    refused();
    begin("left", "30");
    assertThat(page.locator(".said")).containsText("The way back is begun.");
    assertThat(way()).hasText("Left leg, stage 1 of 13");
    // 30 % of 60 a week, half of it on each of two days (worked)
    assertThat(page.locator(".lead").first()).containsText("Up to 9 standing-bound contacts on this leg today; 18 left of its seven days.");

    bound(bo);
    clock.on(1);
    visit(back);
    assertThat(page.locator(".lead").first()).containsText("Rest the leg: 48 hours");
    assertThat(asks("Two clean days")).containsText("1 of 2");
    assertThat(page.getByText("Step to the next stage")).hasCount(0);
    clock.on(1);
    bound(bo);
    clock.on(5);
    visit(back);
    assertThat(asks("Two clean days")).containsText("met");
    assertThat(asks("A week")).containsText("7 of 7 days");
    page.getByLabel("Who steps").first().fill("Coach Reed (invented)");
    page.keyboard().press("Enter");
    assertThat(page.locator(".said")).hasText("The step is kept.");
    assertThat(way()).hasText("Left leg, stage 2 of 13");

    visit("/athlete/" + bo.id() + "/care");
    page.locator("section[aria-labelledby=pain-head] .eleven label").nth(7).tap();
    page.getByLabel("Where on the body").fill("left shin");
    page.getByText("Keep the pain").tap();
    assertThat(page.locator(".said")).isVisible();
    visit(back);
    assertThat(way()).hasText("Left leg, stage 1 of 13");
    assertThat(page.locator("main")).containsText("One stage back for the pain of");

    // that leg was loaded since the hold: somebody has to answer for it
    begin("right", "50");
    assertThat(page.locator("#begin-error")).containsText("Name who says that it may be loaded again");
    refused();
    page.locator("#begin-by").fill("Dr Sedge (invented)");
    page.locator("#begin-by").press("Enter");
    assertThat(page.locator(".said")).containsText("The way back is begun.");
    theEndOfOneLegSaysNothingOfTheOther(bo);
  }

  /** What is refused of one leg stands beside that leg alone, with what was written. */
  private void theEndOfOneLegSaysNothingOfTheOther(Athlete bo) {
    List<WayBack> ways = bench.waysBack().of(bo.id());
    long left = ways.stream().filter(w -> w.leg() == Foot.LEFT).findFirst().orElseThrow().id();
    long right = ways.stream().filter(w -> w.leg() == Foot.RIGHT).findFirst().orElseThrow().id();
    Locator one = page.locator("section[aria-labelledby=way-" + left + "]");
    Locator other = page.locator("section[aria-labelledby=way-" + right + "]");
    one.getByText("End this way back").tap();
    one.getByLabel("Who ends it").fill("Dr Sedge (invented)");
    one.getByLabel("Why no diagnosis").last().fill("another plan");
    one.getByLabel("From").fill(today().minusDays(60).toString());
    one.getByText("End it", new Locator.GetByTextOptions().setExact(true)).tap();
    assertThat(one).containsText("it cannot end before");
    assertThat(one.getByLabel("Who ends it")).hasValue("Dr Sedge (invented)");
    assertThat(other).not().containsText("it cannot end before");
    assertThat(other.getByLabel("Who ends it")).hasValue("");
    assertThat(other.getByLabel("Who ends it")).isHidden();
    refused();
    one.getByLabel("From").fill(today().toString());
    one.getByText("End it", new Locator.GetByTextOptions().setExact(true)).tap();
    assertThat(page.locator(".said")).containsText("The way back is ended.");
    page.getByText("Ways back that ended").tap();
    assertThat(page.getByText("another plan")).isVisible();
  }

  private void begin(String leg, String start) {
    assertThat(page.locator("#begin-head")).isVisible();
    if (page.locator("#begin-former").isHidden()) {
      page.getByText("One leg after days off").tap();
    }
    key(leg).tap();
    page.locator("#begin-start").fill(start);
    page.locator("#begin-former").fill("60");
    page.getByText("Begin it").tap();
  }

  private Locator way() {
    return page.locator("h2[id^=way-]").first();
  }

  private Locator asks(String what) {
    return page.locator(".entries li", new Page.LocatorOptions().setHasText(what)).first();
  }

  /** Five contacts of the left leg from standing, and nothing felt. */
  private void bound(Athlete athlete) {
    visit("/athlete/" + athlete.id() + "?sequence=RL+x5&steps=0");
    page.locator("#tap-IN").tap();
    assertThat(page.locator(".console .said")).containsText("Logged.");
  }

  @Test
  void heightsAndTheWayBackNeedNoScripts() {
    Athlete cy = added("Cy Marrow");
    withoutScripts();
    visit("/athlete/" + cy.id() + "/growth");
    page.locator("#height").fill("5 ft 4 in");
    page.getByText("Keep the height").click();
    assertThat(page.locator(".said")).hasText("The height is kept.");
    page.getByText("1 measurement").click();
    assertThat(page.locator(".entries")).containsText("162.6 cm");
    visit("/athlete/" + cy.id() + "/back");
    key("right").click();
    page.getByLabel("Who allows it", new Page.GetByLabelOptions().setExact(false)).fill("Dr Sedge (invented)");
    page.locator("#begin-former").fill("200");
    page.getByText("Begin it").click();
    assertThat(way()).hasText("Right leg, stage 1 of 13");
  }

  @Test
  void aReaderSeesNoHeightPainOrWayBackAndMedicalStaffTakeAHeightOut() {
    Athlete fay = added("Fay Thorne");
    bench.growth().add(fay, new Measurement(0, today().minusWeeks(20), 1.512, null, null, "zznursezz"));
    bench.growth().add(fay, new Measurement(0, today().minusWeeks(4), 1.534, null, null, "zznursezz"));
    bench.care().addPain(fay.id(), new Pain(0, today(), "zzshinzz", 3, null, false));
    bench.waysBack().begin(fay.id(), new WayBack(0, Foot.LEFT, today(), Stages.USUAL, 100, 28, new WayBack.Clearance("zzclinicianzz", today(), true), List.of(), null));
    try (WebServer open = WebServer.start(bench, "all", 0)) {
      in(open, Role.READER, null);
      String own = base(open) + "/athlete/" + fay.id();
      for (String path : List.of("", "/care", "/growth", "/back", "/full-run", "/long-jump", "/for/home")) {
        Response answer = page.navigate(own + path);
        Assertions.assertThat(answer.status()).as(path).isEqualTo(path.isEmpty() ? 200 : 403);
        Assertions.assertThat(page.content()).as(path).doesNotContain("zz").doesNotContain("153.4").doesNotContain("way back").doesNotContain("Way back");
      }
      page.navigate(own);
      assertThat(page.locator(".tabs a")).hasText(new String[] {"Marks"});

      in(open, Role.MEDICAL, null);
      page.navigate(own + "/growth");
      assertThat(page.getByText("Keep the height")).isVisible();
      page.getByText("2 measurements").tap();
      page.getByLabel("Remove 153.4 cm", new Page.GetByLabelOptions().setExact(false)).tap();
      assertThat(page.locator(".said")).hasText("The measurement is taken out.");

      in(open, Role.ATHLETE, fay.id());
      page.navigate(own + "/growth");
      assertThat(page.locator("main")).containsText("151.2 cm");
      assertThat(page.locator("main form")).hasCount(0);
      page.navigate(own + "/back");
      assertThat(way()).hasText("Left leg, stage 1 of 13");
      assertThat(page.locator("main form:visible")).hasCount(0);
      Assertions.assertThat(page.navigate(base(open) + "/athlete/" + first().id() + "/growth").status()).isEqualTo(403);
    }
    complaints.removeIf(c -> c.contains("403"));
  }

  @Test
  void theyLookRightInHandOnADeskByKeysAndOnPaper() {
    Athlete ely = added("Ely Quarr");
    bench.waysBack().begin(ely.id(), new WayBack(0, Foot.RIGHT, today(), Stages.USUAL, 100, 28, new WayBack.Clearance("Dr Sedge (invented)", today(), false), List.of(), null));
    bench.waysBack().begin(ely.id(), new WayBack(0, Foot.LEFT, today(), new Stages(0.1, 0.05), 900, 28, new WayBack.Clearance("Dr Sedge (invented)", today(), false), List.of(), null));
    looksRight(
        List.of(
            "/athlete/" + named("Mabel Cordgrass").id() + "/growth", "/athlete/" + ely.id() + "/growth", "/athlete/" + named("Otis Sedgeley").id() + "/back",
            "/athlete/" + ely.id() + "/back", "/athlete/" + named("Tovi Plover").id() + "/back"));
  }
}
