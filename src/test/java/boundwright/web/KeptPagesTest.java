package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.athlete.Athlete;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Surface;
import boundwright.demo.DemoSquad;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.account.LastWeek;
import boundwright.load.account.LoadScale;
import boundwright.load.account.OtherWork;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Stores;
import boundwright.store.Workbench;
import boundwright.store.engine.DataPlace;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is kept of each athlete is never shown when it is not true any more: whatever is changed, by this program or by another with the
 * same store, the pages are to the letter those of a program that has just started.
 */
class KeptPagesTest {
  private static final long SEED = 20261129;
  private static final int KINDS = 22;
  /** Each kind of change so often; a dozen rounds were tried with {@code -Dboundwright.kept.rounds=12}. */
  private static final int ROUNDS = Integer.getInteger("boundwright.kept.rounds", 1);
  private static final List<String> PAGES = List.of("/", "/watch", "/tapes", "/?sort=last5&down=1&drill=5", "/athlete/1", "/athlete/2?drill=2");

  @TempDir Path folder;

  /** A clock whose day goes on when the test says so. */
  private static final class Days extends Clock {
    private Instant now = Instant.parse("2026-05-12T09:00:00Z");

    void on() {
      now = now.plus(Duration.ofDays(1));
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  private static String get(HttpClient client, WebServer server, String page) throws Exception {
    HttpResponse<String> answer =
        client.send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + page)).build(), HttpResponse.BodyHandlers.ofString());
    assertThat(answer.statusCode()).as(page).isEqualTo(200);
    return answer.body().replaceAll("value=\"[0-9A-Za-z_-]{20,}\"", "value=\"..\"");
  }

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void whateverIsChangedByWhomeverThePagesAreThoseOfAFreshProgram(boolean postgres) throws Exception {
    DataPlace place = postgres ? new DataPlace(folder, Stores.schemaOf(folder)) : DataPlace.of(folder);
    Days days = new Days();
    Random random = new Random(SEED);
    HttpClient client = HttpClient.newHttpClient();
    try (Workbench bench = Workbench.open(place, days);
        Workbench other = Workbench.open(place, days)) {
      DemoSquad.fill(bench);
      try (WebServer server = WebServer.start(bench, "127.0.0.1", 0)) {
        // each change is looked at alone: one that concerns everybody would hide what another one missed
        for (int round = 0; round < ROUNDS; round++) {
          List<Integer> kinds = new ArrayList<>(IntStream.range(0, KINDS).boxed().toList());
          Collections.shuffle(kinds, random);
          for (int kind : kinds.subList(0, postgres ? KINDS / 2 : KINDS)) {
            String what = tried(random.nextBoolean() ? bench : other, random, kind, days);
            compare(client, server, place, days, what + " in round " + round + " of seed " + SEED);
          }
        }
      }
    }
  }

  private static void compare(HttpClient client, WebServer server, DataPlace place, Clock days, String after) throws Exception {
    try (Workbench started = Workbench.open(place, days);
        WebServer fresh = WebServer.start(started, "127.0.0.1", 0)) {
      for (String page : PAGES) {
        String told = get(client, server, page);
        assertThat(told).as("%s after %s", page, after).isEqualTo(get(client, fresh, page));
        assertThat(get(client, server, page)).as("%s again after %s", page, after).isEqualTo(told);
      }
    }
  }

  private static String tried(Workbench w, Random random, int kind, Days days) {
    try {
      return edit(w, random, kind, days);
    } catch (RefusedException e) {
      return "refused";
    }
  }

  /** Does one thing that a coach does; answers what. */
  private static String edit(Workbench w, Random random, int kind, Days days) {
    List<Athlete> squad = w.athletes().all();
    Athlete a = squad.get(random.nextInt(squad.size()));
    LocalDate today = LocalDate.now(days);
    LocalDate day = today.minusDays(random.nextInt(8));
    String mark = " " + random.nextInt(1_000_000);
    switch (kind) {
      case 0, 1 -> {
        w.logbook().log(rep(a, random.nextBoolean() ? today : day, random));
        return "rep";
      }
      case 2 -> {
        List<Rep> reps = w.reps().recent(a.id(), 5);
        reps.stream().findFirst().ifPresent(r -> w.logbook().undo(a.id(), r.id()));
        return "taken back";
      }
      case 3 -> {
        w.care().addPain(a.id(), new Pain(0, today, "left shin", 4 + random.nextInt(7), null, false));
        return "pain";
      }
      case 4 -> {
        w.care().openHold(a.id(), new MedicalHold(0, day, "invented", null, null));
        return "hold";
      }
      case 5 -> {
        w.care().care(a.id(), today).holds().stream().filter(h -> h.clearedOn() == null).findFirst().ifPresent(h -> w.care().endHold(a.id(), h.id(), "Dr Invented", today));
        return "hold ended";
      }
      case 6 -> {
        w.care().setGrowing(a.id(), random.nextBoolean(), day);
        return "growing";
      }
      case 7 -> {
        OtherWork kept = w.load().add(new OtherWork(0, a.id(), day, OtherWork.Kind.BOUNDS, 20 + random.nextInt(120), 0));
        if (random.nextInt(3) == 0) {
          w.load().removeOtherWork(a.id(), kept.id());
        }
        return "other work";
      }
      case 8 -> {
        w.load().keep(a.id(), new LastWeek(day, random.nextInt(200)));
        return "last week";
      }
      case 9 -> {
        w.load().keep(new SeasonStart(random.nextBoolean() ? a.id() : null, day, one(random, Season.values())));
        return "season";
      }
      case 10 -> {
        DayPlan plan = new DayPlan("Day" + mark, List.of(new Drill(Sequence.parse("RRL x2"), random.nextBoolean() ? null : 4, 1 + random.nextInt(3), 3, true), new Drill(Sequence.parse("R x6"), null, 1, 2, false)));
        if (random.nextBoolean()) {
          w.settings().keep(plan);
        } else {
          w.settings().keep(today, plan);
        }
        return "plan";
      }
      case 11 -> {
        CoachSettings s = w.settings().kept();
        w.settings().keep(new CoachSettings(random.nextBoolean() ? LengthUnit.METRES : LengthUnit.FEET_INCHES, s.marks(), s.facility(), s.setContacts()));
        return "settings";
      }
      case 12 -> {
        GuardSettings s = w.care().guard();
        LoadScale l = s.scale();
        w.care().keep(new GuardSettings(s.limits(), new LoadScale(4 + random.nextInt(6), l.times(), l.setUnits(), l.sportUnits())));
        return "limits of load";
      }
      case 13 -> {
        DrillFamily family = one(random, DrillFamily.values());
        w.ladderDesk().decide(a, family, 2 * random.nextInt(6), "an invented reason");
        return "ladder";
      }
      case 14 -> {
        w.athletes().update(new Athlete(a.id(), "Renamed" + mark, one(random, Level.values()), Foot.LEFT, 2 * random.nextInt(5)));
        w.logbook().relearn(a.id());
        return "renamed";
      }
      case 15 -> {
        w.athletes().addKnownMark(a.id(), new KnownMark(0, KnownMark.Kind.STANDING_TRIPLE, 0, 5 + random.nextDouble(), day, false));
        w.logbook().relearn(a.id());
        return "known mark";
      }
      case 16 -> {
        w.athletes().addRunUp(a.id(), new MeasuredRunUp(0, 4, 8 + random.nextDouble(), null, day));
        w.logbook().relearn(a.id());
        return "run-up";
      }
      case 17 -> {
        w.attendance().keepHere(today, random.nextBoolean() ? Set.copyOf(squad.stream().map(Athlete::id).toList()) : Set.of(squad.get(0).id(), a.id()));
        return "who is here";
      }
      case 18 -> {
        w.runThroughs().add(new RunThroughEntry(0, a.id(), day, new RunThrough(12, 28.5, List.of(2.0), null, null), ""));
        return "run-through";
      }
      case 19 -> {
        w.jumpLog().jumps(a.id()).stream().findFirst().ifPresent(j -> w.jumpLog().removeJump(a.id(), j.id()));
        return "jump taken out";
      }
      case 20 -> {
        if (squad.size() > 6) {
          w.athletes().erase(a.id());
          return "erased";
        }
        Athlete added = w.athletes().add(new Athlete(0, "Added" + mark, Level.BEGINNER, Foot.RIGHT, 2));
        w.logbook().log(rep(added, day, random));
        return "added";
      }
      default -> {
        days.on();
        return "next day";
      }
    }
  }

  private static Rep rep(Athlete a, LocalDate day, Random random) {
    Outcome outcome = one(random, new Outcome[] {Outcome.SHORT, Outcome.IN});
    return new Rep(0, a.id(), day, Sequence.parse("RRL RRL"), 4, Surface.TRACK, List.of(), null, outcome, null, 11 + 3 * random.nextDouble(), random.nextBoolean(), List.of());
  }

  private static <T> T one(Random random, T[] of) {
    return of[random.nextInt(of.length)];
  }
}
