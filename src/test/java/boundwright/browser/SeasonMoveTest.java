package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.demo.DemoSeason;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.solve.SeasonWork;
import boundwright.store.season.SeasonFile;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A session is moved by keys, by the mouse and by a finger; nothing is published before the coach says so, and it can be undone. */
class SeasonMoveTest extends PhoneCase {
  private static final int WEEKS = 4;

  private static SeasonPlan good = new SeasonPlan("", 0, List.of());

  private long id;
  private SeasonPlan plan;

  @BeforeEach
  @Override
  void open() throws IOException {
    super.open();
    SeasonInput all = DemoSeason.from(LocalDate.now(bench.clock()).plusDays(1), bench.care().guard());
    byte[] file = SeasonFile.write(shorter(all), bench.care().guard(), "").getBytes(StandardCharsets.UTF_8);
    SeasonDesk desk = new SeasonDesk(bench.seasons(), SeasonWork::ofFile, bench.clock(), new Random(1));
    SeasonInput input = SeasonFile.read(file, bench.care().guard(), (name, written) -> bench.athletes().byName(name).orElseThrow().id());
    id = desk.keep(input);
    good = !good.years().isEmpty() ? good : SeasonWork.ofFile().planner(input, null, desk.today(), 1).plan(Duration.ZERO, t -> {}).plan();
    plan = bench.seasons().publish(id, good, bench.clock().instant());
  }

  /** The first weeks; everybody may come on any day, so that there is somewhere to go. */
  private SeasonInput shorter(SeasonInput in) {
    List<Member> squad =
        in.squad().stream()
            // a plan of a file alone knows nothing of who is on the way back
            .filter(m -> bench.care().care(m.id(), in.first()).backs().isEmpty())
            .map(m -> new Member(m.athlete(), m.growing(), m.firstSession(), m.steps(), m.fullSteps(), EnumSet.allOf(DayOfWeek.class), m.peakWeek(), null, List.of(), List.of(), List.of(), m.past()))
            .toList();
    return new SeasonInput(in.name(), in.first(), in.first().plusWeeks(WEEKS).minusDays(1), List.of(), List.of(), in.venues(), squad, in.rules());
  }

  private SeasonPlan published() {
    return bench.seasons().published(id).orElseThrow();
  }

  /** The first session that may go somewhere else in its week, its day unfolded. */
  private Locator grip() {
    for (int week = 0; week < WEEKS; week++) {
      visit("/season/week?season=" + id + "&of=" + LocalDate.now(bench.clock()).plusDays(8).plusWeeks(week));
      for (Locator grip : page.locator("[data-grip]").all()) {
        String address = grip.getAttribute("href");
        boolean open = Boolean.TRUE.equals(page.evaluate("a => fetch(a, {headers: {'HX-Request': 'true'}}).then(r => r.text()).then(t => t.includes('Put it here'))", address));
        if (open) {
          page.evaluate("() => document.querySelectorAll('.week-day').forEach(d => { d.open = true; })");
          return page.locator("[data-grip][href='" + address + "']");
        }
      }
    }
    throw new AssertionError("no session of the plan may go anywhere else");
  }

  private static String part(String address, String name) {
    return address.replaceAll(".*[?&]" + name + "=([^&]*).*", "$1");
  }

  private void moved(String address, String to) {
    assertThat(page.locator(".week-draft")).containsText("against version");
    long athlete = Long.parseLong(part(address, "athlete"));
    LocalDate from = LocalDate.parse(part(address, "day"));
    int before = published().version();
    assertThat(published().years()).as("nothing is published yet").isEqualTo(plan.years());
    page.getByText("Publish", new Page.GetByTextOptions().setExact(true)).click();
    assertThat(page.locator(".said")).containsText("Version " + (before + 1) + " is published.");
    SeasonPlan.Year now = published().of(athlete).orElseThrow();
    SeasonPlan.Year was = plan.of(athlete).orElseThrow();
    assertThat(now.on(LocalDate.parse(to)).orElseThrow().kind()).isEqualTo(was.on(from).orElseThrow().kind());
    assertThat(now.on(from).map(s -> s.kind())).isEqualTo(was.on(LocalDate.parse(to)).map(s -> s.kind()));
    page.getByText("Undo version " + (before + 1)).click();
    page.getByText("Put version " + before + " back").click();
    assertThat(page.locator(".said")).containsText("Version " + (before + 2) + " is published.");
    assertThat(published().years()).isEqualTo(plan.years());
  }

  @Test
  void byKeysAndEscapeLeavesItWhereItWas() {
    Locator grip = grip();
    String address = grip.getAttribute("href");
    grip.focus();
    page.keyboard().press("Enter");
    Locator offered = page.locator(".move-mark form button");
    assertThat(offered.first()).isFocused();
    assertThat(page.locator(".move-refused .move-mark").first()).containsText("refused");
    page.keyboard().press("Escape");
    assertThat(page.locator(".move-mark")).hasCount(0);
    assertThat(grip).isFocused();
    page.keyboard().press("Enter");
    assertThat(offered.first()).isFocused();
    page.keyboard().press("ArrowUp");
    page.keyboard().press("ArrowDown");
    assertThat(offered.first()).isFocused();
    String to = String.valueOf(page.evaluate("() => document.activeElement.closest('[data-day]').dataset.day"));
    page.keyboard().press("Enter");
    moved(address, to);
  }

  @Test
  void byTheMouseAndByAFinger() {
    Locator grip = grip();
    String address = grip.getAttribute("href");
    grip.scrollIntoViewIfNeeded();
    BoundingBox at = grip.boundingBox();
    page.mouse().move(at.x + 10, at.y + 10);
    page.mouse().down();
    page.mouse().move(at.x + 30, at.y + 30);
    Locator refused = page.locator(".week-slot.move-refused").first();
    BoundingBox no = refused.boundingBox();
    page.mouse().move(no.x + 20, no.y + 10);
    page.mouse().up();
    assertThat(refused.locator(".move-mark")).containsText("refused");
    assertThat(page.locator(".week-draft")).hasCount(0);
    page.getByText("Leave it here").click();
    assertThat(page.locator(".move-mark")).hasCount(0);

    grip.scrollIntoViewIfNeeded();
    at = grip.boundingBox();
    CDPSession touch = context.newCDPSession(page);
    finger(touch, "touchStart", at.x + 10, at.y + 10);
    finger(touch, "touchMove", at.x + 30, at.y + 30);
    Locator open = page.locator(".week-slot:has(.move-mark form button)").first();
    assertThat(open).isVisible();
    open.scrollIntoViewIfNeeded();
    BoundingBox yes = open.boundingBox();
    String to = String.valueOf(open.getAttribute("data-day"));
    finger(touch, "touchMove", yes.x + 20, yes.y + 10);
    touch.send("Input.dispatchTouchEvent", event("touchEnd", new JsonArray()));
    moved(address, to);
  }

  private static void finger(CDPSession touch, String type, double x, double y) {
    JsonObject point = new JsonObject();
    point.addProperty("x", x);
    point.addProperty("y", y);
    JsonArray points = new JsonArray();
    points.add(point);
    touch.send("Input.dispatchTouchEvent", event(type, points));
  }

  private static JsonObject event(String type, JsonArray points) {
    JsonObject event = new JsonObject();
    event.addProperty("type", type);
    event.add("touchPoints", points);
    return event;
  }
}
