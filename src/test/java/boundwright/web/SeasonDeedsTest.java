package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.demo.DemoSeason;
import boundwright.demo.InventedFolder;
import boundwright.load.GuardSettings;
import boundwright.season.Away;
import boundwright.season.Member;
import boundwright.season.PlainPlanner;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Span;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.mend.Happened;
import boundwright.season.solve.SeasonWork;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Planning, publishing, mending and undoing, as a browser without scripts sees them. The season begins tomorrow and lasts twelve weeks. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SeasonDeedsTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-09-27T09:00:00Z"), ZoneId.of("Europe/Berlin"));
  private static final int WEEKS = 12;

  private static SeasonPlan good = new SeasonPlan("", 0, List.of());

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client client;
  private long id;

  @BeforeEach
  void open() {
    bench = Workbench.open(InventedFolder.fill(folder, DAY), DAY);
    byte[] file = SeasonFile.write(DemoSeason.from(LocalDate.of(2026, 9, 28), GuardSettings.DEFAULT), GuardSettings.DEFAULT, "").getBytes(StandardCharsets.UTF_8);
    SeasonInput all = SeasonFile.read(file, bench.care().guard(), (name, written) -> bench.athletes().byName(name).orElseThrow().id());
    id = new SeasonDesk(bench.seasons(), SeasonWork::ofFile, DAY, new Random(1)).keep(shorter(all));
    server = WebServer.start(bench, "0.0.0.0", 0);
    client = Client.atTheMachine(server);
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  /** The first weeks, before any meet. */
  private static SeasonInput shorter(SeasonInput in) {
    List<Member> squad =
        in.squad().stream()
            .map(m -> new Member(m.athlete(), m.growing(), m.firstSession(), m.steps(), m.fullSteps(), m.days(), m.peakWeek(), m.joins(), List.of(), List.of(), List.of(), m.past()))
            .toList();
    return new SeasonInput(in.name(), in.first(), in.first().plusWeeks(WEEKS).minusDays(1), in.periods().subList(0, 2), List.of(), in.venues(), squad, in.rules());
  }

  private HttpResponse<String> post(String path, String... fields) {
    return post(client, path, fields);
  }

  private HttpResponse<String> post(Client by, String path, String... fields) {
    List<String> all = new ArrayList<>(List.of("csrf", Client.hidden(by.get("/season/file.json?season=1").statusCode() == 200 ? by.get("/season").body() : by.get("/plan").body(), "csrf"), "season", String.valueOf(id)));
    all.addAll(List.of(fields));
    return by.post(path, all.toArray(String[]::new));
  }

  private int versions() {
    return bench.seasons().versions(id).size();
  }

  private SeasonPlan published() {
    return bench.seasons().published(id).orElseThrow();
  }

  /** Publishes a good plan without the pages; the same for all tests, as the squad has the same numbers in each. */
  private SeasonPlan good() {
    if (good.years().isEmpty()) {
      SeasonInput input = bench.seasons().input(id).orElseThrow();
      good = SeasonWork.ofFile().planner(input, null, LocalDate.now(DAY), 1).plan(Duration.ZERO, t -> {}).plan();
    }
    return bench.seasons().publish(id, good, DAY.instant());
  }

  /** Waits until the search is over: asks as the page does, and no longer than a minute. */
  private String proposal() {
    long most = System.nanoTime() + 60_000_000_000L;
    String page = client.get("/season/plan/progress?season=" + id).body();
    while (!page.contains("id=\"proposal\"") && System.nanoTime() < most) {
      java.util.concurrent.locks.LockSupport.parkNanos(50_000_000L);
      page = client.get("/season/plan/progress?season=" + id).body();
    }
    assertThat(page).contains("not published");
    return page;
  }

  @Test
  void aSeasonIsPlannedAndPublished() {
    assertThat(client.get("/season").body()).contains("Plan the season").doesNotContain("Mend:");
    HttpResponse<String> started = post("/season/plan", "seconds", "1");
    assertThat(started.statusCode()).isEqualTo(200);
    String page = proposal();
    assertThat(page).contains("New plan, not published", "Wishes not met", "Off the load wanted").doesNotContain("cannot be published");
    assertThat(versions()).as("nothing is published before the coach says so").isZero();
    String number = Client.hidden(page, "proposal");
    assertThat(post("/season/publish", "proposal", number).body()).contains("Version 1 is published.", "version 1");
    assertThat(versions()).isEqualTo(1);
    HttpResponse<String> again = post("/season/publish", "proposal", number);
    assertThat(again.statusCode()).as("a second tap").isEqualTo(422);
    assertThat(again.body()).contains("not there any more");
    assertThat(versions()).isEqualTo(1);
  }

  @Test
  void aSearchIsStoppedWithTheBestSoFarAndTheProposalIsDropped() {
    good();
    post("/season/plan", "seconds", "600");
    assertThat(client.get("/season").body()).contains("Stop, take the best so far");
    post("/season/plan", "seconds", "600");
    post("/season/plan/stop");
    String page = proposal();
    assertThat(page).contains("Plan made anew, not published", "against version 1.");
    assertThat(post("/season/drop", "proposal", Client.hidden(page, "proposal")).body()).doesNotContain("id=\"proposal\"");
    assertThat(versions()).isEqualTo(1);
  }

  @Test
  void aSearchOfNoTimeOrOfNothingIsRefusedInWords() {
    assertThat(post("/season/plan", "seconds", "0").body()).contains("1 to 600");
    assertThat(post("/season/plan", "seconds", "soon").statusCode()).isEqualTo(422);
    assertThat(post("/season/mend").body()).contains("Nothing to mend was entered");
    assertThat(post("/season/undo", "version", "0").body()).contains("no version before");
    assertThat(client.post("/season/plan", "csrf", Client.hidden(client.get("/season").body(), "csrf"), "season", "77").statusCode()).isEqualTo(404);
  }

  @Test
  void aHeldAthleteIsMendedAndUndoingItIsRefusedWhileTheyAreHeld() {
    SeasonPlan before = good();
    SeasonPlan.Year year = before.years().get(0);
    LocalDate from = year.days().get(4).date();
    String page =
        post("/season/mend", "missed", "", "away", String.valueOf(year.athleteId()), "from", from.toString(), "to", from.plusDays(9).toString(), "held", "on", "closed", "", "closedOn", "").body();
    assertThat(page).contains("Mended plan, not published", "against version 1.", year.athlete(), "rest");
    assertThat(bench.seasons().input(id).orElseThrow().squad()).as("not kept before it is accepted").allMatch(m -> m.away().isEmpty());
    assertThat(post("/season/publish", "proposal", Client.hidden(page, "proposal")).body()).contains("Version 2 is published.");
    assertThat(bench.seasons().input(id).orElseThrow().squad().stream().flatMap(m -> m.away().stream()))
        .containsExactly(new Away(new Span(from, from.plusDays(9)), Away.Why.HELD));
    assertThat(published().of(year.athleteId()).orElseThrow().days()).noneMatch(d -> !d.date().isBefore(from) && !d.date().isAfter(from.plusDays(9)));
    assertThat(client.get("/season").body()).contains("Put version 1 back");
    HttpResponse<String> undo = post("/season/undo", "version", "2");
    assertThat(undo.statusCode()).isEqualTo(422);
    assertThat(undo.body()).contains("held, so no training");
    assertThat(versions()).isEqualTo(2);
  }

  @Test
  void theVersionBeforeIsPutBackAsANewOne() {
    SeasonPlan one = good();
    SeasonPlan.Year first = one.years().get(0);
    PlannedDay last = first.days().get(first.days().size() - 1);
    List<SeasonPlan.Year> years = new ArrayList<>(one.years());
    years.set(0, new SeasonPlan.Year(first.athleteId(), first.athlete(), first.days().subList(0, first.days().size() - 1), first.climbs(), first.wanted()));
    bench.seasons().publish(id, new SeasonPlan(one.name(), 0, years), DAY.instant());
    assertThat(post("/season/undo", "version", "1").body()).as("another tab's button").contains("Version 2 was published meanwhile");
    assertThat(post("/season/undo", "version", "2").body()).contains("Version 3 is published.");
    assertThat(published().years()).isEqualTo(one.years());
    assertThat(published().years().get(0).on(last.date())).contains(last.session());
    assertThat(post("/season/undo", "version", "2").statusCode()).as("a second tap").isEqualTo(422);
    assertThat(versions()).isEqualTo(3);
  }

  @Test
  void aMissedSessionAndAClosedPlaceAreMended() {
    SeasonPlan plan = good();
    SeasonPlan.Year year = plan.years().get(0);
    PlannedDay soon = year.days().get(0);
    assertThat(client.get("/season").body()).contains("value=\"" + year.athleteId() + " " + soon.date() + "\"");
    String missed = post("/season/mend", "missed", year.athleteId() + " " + soon.date(), "away", "", "closed", "").body();
    assertThat(missed).contains("Mended plan");
    String venue = plan.years().stream().flatMap(y -> y.days().stream()).skip(6).map(d -> String.valueOf(d.session().venue())).findFirst().orElseThrow();
    LocalDate day = plan.years().stream().flatMap(y -> y.days().stream()).skip(6).filter(d -> venue.equals(d.session().venue())).findFirst().orElseThrow().date();
    String closed = post("/season/mend", "missed", "", "away", "", "closed", venue, "closedOn", day.toString()).body();
    post("/season/publish", "proposal", Client.hidden(closed, "proposal"));
    assertThat(published().version()).isEqualTo(2);
    assertThat(published().years()).allSatisfy(y -> assertThat(y.on(day).filter(s -> venue.equals(s.venue()))).isEmpty());
    assertThat(post("/season/publish", "proposal", Client.hidden(missed, "proposal")).body()).as("the other tab's proposal was replaced").contains("not there any more");
    assertThat(post("/season/mend", "missed", "", "away", "", "closed", "moon", "closedOn", day.toString()).body()).contains("no place 'moon'", "<details class=\"season-mend\" open>");
    assertThat(post("/season/mend", "missed", "", "away", "", "closed", venue, "closedOn", "2026-01-01").body()).contains("cannot be mended");
  }

  @Test
  void aProposalIsNotPublishedOverWhatAnotherTabPublishedOrChanged() {
    good();
    SeasonInput input = bench.seasons().input(id).orElseThrow();
    String page = post("/season/mend", "missed", "", "away", "", "closed", input.venues().get(0).key(), "closedOn", input.first().toString()).body();
    bench.seasons().publish(id, published(), DAY.instant());
    HttpResponse<String> late = post("/season/publish", "proposal", Client.hidden(page, "proposal"));
    assertThat(late.statusCode()).isEqualTo(422);
    assertThat(late.body()).contains("Version 2 was published meanwhile");
    String anew = post("/season/mend", "missed", "", "away", "", "closed", input.venues().get(0).key(), "closedOn", input.first().toString()).body();
    bench.seasons().keep(id, Happened.closed(input, input.venues().get(1).key(), input.last()));
    assertThat(post("/season/publish", "proposal", Client.hidden(anew, "proposal")).body()).contains("The season was changed");
    assertThat(versions()).isEqualTo(2);
  }

  @Test
  void whatTheGuardRefusesIsNeverPublishedFromThePage() {
    SeasonInput input = bench.seasons().input(id).orElseThrow();
    bench.seasons().publish(id, new PlainPlanner().plan(input, Optional.empty()), DAY.instant());
    SeasonPlan good = good();
    assertThat(good.version()).isEqualTo(2);
    HttpResponse<String> undo = post("/season/undo", "version", "2");
    assertThat(undo.statusCode()).isEqualTo(422);
    assertThat(undo.body()).contains("Not published:", "Plan anew, or mend the days.");
    assertThat(versions()).isEqualTo(2);
  }

  @Test
  void aDaySaysWhyAndTheSeasonSaysWhichWishesAreNotMet() {
    SeasonPlan plan = good();
    SeasonPlan.Year year = plan.years().get(0);
    PlannedDay day = year.days().get(3);
    String why = "/season/why?season=" + id + "&athlete=" + year.athleteId() + "&day=" + day.date();
    assertThat(client.get("/season/week?of=" + day.date()).body()).contains(why.replace("&", "&amp;"));
    assertThat(client.get(why).body()).contains("Why " + year.athlete(), "standing-bound contacts wanted.", "Longest approach in it, as expected by then: ");
    assertThat(client.get(why, "HX-Request", "true").body()).contains("standing-bound contacts wanted.").doesNotContain("<html");
    assertThat(client.get("/season/why?season=" + id + "&athlete=99&day=" + day.date()).statusCode()).isEqualTo(422);
    assertThat(client.get("/season/wishes?season=" + id).body()).contains("Wishes not met").containsAnyOf("None: all are met.", "in the week", "on the day");
    SeasonInput input = bench.seasons().input(id).orElseThrow();
    bench.seasons().keep(id, Happened.away(input, year.athleteId(), new Away(new Span(day.date(), day.date()), Away.Why.AWAY)));
    assertThat(client.get(why).body()).as("changed since").contains("Mend the plan.");
  }

  @Test
  void aMoveIsADraftThatOnlyWhoMayPublishSees() {
    SeasonPlan plan = good();
    String form = "";
    LocalDate from = LocalDate.MIN;
    long athlete = 0;
    for (SeasonPlan.Year y : plan.years()) {
      for (PlannedDay d : y.days()) {
        String page = form.isEmpty() ? client.get("/season/move?season=" + id + "&athlete=" + y.athleteId() + "&day=" + d.date()).body() : "";
        if (page.contains("Put it here")) {
          form = page.substring(page.indexOf("<form method=\"post\" action=\"/season/move\""));
          from = d.date();
          athlete = y.athleteId();
        }
      }
    }
    assertThat(form).isNotEmpty();
    LocalDate to = LocalDate.parse(Client.hidden(form, "to"));
    String[] move = {"draft", "0", "athlete", String.valueOf(athlete), "day", from.toString(), "to", to.toString()};
    String week = post("/season/move", move).body();
    assertThat(week).contains("A draft.", "against version 1.", "Drop it");
    assertThat(post("/season/move", move).body()).as("a second tap").contains("not what waits now");
    assertThat(client.get("/season").body()).contains("Mended plan, not published");
    Client phone = Network.phoneThatMayLog(server);
    assertThat(phone.get("/season/week?of=" + to).body()).doesNotContain("A draft.", "data-grip");
    assertThat(published().years()).isEqualTo(plan.years());
    post("/season/publish", "proposal", Client.hidden(week, "proposal"));
    assertThat(published().of(athlete).orElseThrow().on(to)).isPresent();
    assertThat(post("/season/move", "draft", "0", "athlete", String.valueOf(athlete), "day", to.toString(), "to", "2020-01-01").body()).contains("outside the season");
    assertThat(client.get("/season/move?season=" + id + "&athlete=99&day=" + from).statusCode()).isEqualTo(422);
  }

  @Test
  void aPhoneThatMayOnlyLogMayDoNoneOfIt() {
    good();
    Client phone = Network.phoneThatMayLog(server);
    for (String path : new String[] {"/season/plan", "/season/plan/stop", "/season/publish", "/season/drop", "/season/mend", "/season/undo", "/season/move", "/season/new", "/season/input/rules", "/season/input/there"}) {
      assertThat(post(phone, path, "seconds", "1").statusCode()).as(path).isEqualTo(403);
    }
    for (String path : new String[] {"/season/plan/progress?season=1", "/season/why?season=1&athlete=1&day=2026-09-28", "/season/wishes?season=1", "/season/move?season=1&athlete=1&day=2026-09-28", "/season/input?season=1", "/season/new"}) {
      assertThat(phone.get(path).statusCode()).as(path).isEqualTo(403);
    }
    assertThat(versions()).isEqualTo(1);
  }
}
