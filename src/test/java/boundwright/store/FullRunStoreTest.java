package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.board.GapEntry;
import boundwright.approach.full.DistanceEntry;
import boundwright.approach.full.FoundDistance;
import boundwright.approach.full.FoundDistance.Where;
import boundwright.approach.full.FullRunAnswer;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.approach.weather.DayWeather;
import boundwright.approach.weather.RepWeather;
import boundwright.approach.weather.Weather;
import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.jump.Event;
import boundwright.jump.JumpEntry;
import boundwright.jump.Phases;
import boundwright.meet.Attempt;
import boundwright.meet.BoardDistance;
import boundwright.meet.Entrant;
import boundwright.meet.EventsAnswer;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.meet.day.DaySheet;
import boundwright.meet.day.MeetDay;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Distances by approach steps and the weather of days on a real store. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class FullRunStoreTest {
  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().add(Fixtures.athlete("Ada Longshore"));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private DistanceEntry distance(int steps, double m, Weather weather) {
    return new DistanceEntry(0, ada.id(), Fixtures.TODAY.minusDays(3), steps, m, weather, "soft");
  }

  @Test
  void aDistanceComesBackWithItsWeatherAndCanBeTakenBack() {
    Weather all = new Weather(-0.7, Weather.From.FLAG, 11.5, false);
    DistanceEntry kept = w.fullRunLog().add(distance(8, 11.23, all));
    DistanceEntry bare = w.fullRunLog().add(distance(12, 11.80, Weather.UNKNOWN));
    DistanceEntry side = w.fullRunLog().add(distance(12, 11.90, new Weather(null, Weather.From.TAIL, null, null)));
    assertThat(w.fullRunLog().distances(ada.id())).containsExactly(kept, bare, side);
    assertThat(w.fullRunLog().removeDistance(ada.id() + 1, kept.id())).isEmpty();
    assertThat(w.fullRunLog().removeDistance(ada.id(), kept.id())).contains(kept);
    assertThat(w.fullRunLog().distances(ada.id())).containsExactly(bare, side);
    w.athletes().erase(ada.id());
    assertThat(w.fullRunLog().distances(ada.id())).isEmpty();
    assertThat(w.fullRunLog().everybody()).isEmpty();
  }

  @Test
  void aDaysWeatherIsReplacedAndTakenOut() {
    LocalDate day = Fixtures.TODAY;
    w.weather().keep(new DayWeather(day, new Weather(1.0, Weather.From.FLAG, null, null), ""));
    DayWeather better = new DayWeather(day, new Weather(1.4, Weather.From.GAUGE, 18.0, true), "gauge came");
    w.weather().keep(better);
    assertThat(w.weather().days()).containsExactly(better);
    assertThat(w.weather().remove(day)).contains(better);
    assertThat(w.weather().remove(day)).isEmpty();
  }

  /** The page shows it each time; learning it takes seconds with a squad's log. */
  @Test
  void whatTheWeatherDoesToRepsIsLearnedOnceUntilSomethingIsKept() {
    for (int i = 0; i < 12; i++) {
      LocalDate day = Fixtures.TODAY.minusDays(i);
      Rep rep = rep(day, 9 + 0.1 * (i % 3));
      w.reps().write(x -> x.add(rep));
      w.weather().keep(new DayWeather(day, Weather.gauge(i % 3 - 1.0), ""));
    }
    RepWeather learned = w.weatherDesk().reps(Fixtures.TODAY);
    assertThat(learned.reps()).isEqualTo(12);
    assertThat(w.weatherDesk().reps(Fixtures.TODAY)).isSameAs(learned);
    assertThat(w.weatherDesk().reps(Fixtures.TODAY.plusDays(1))).as("reps are a day older then").isNotSameAs(learned);
    w.weather().keep(new DayWeather(Fixtures.TODAY, Weather.gauge(2.0), ""));
    RepWeather windier = w.weatherDesk().reps(Fixtures.TODAY);
    assertThat(windier).isNotEqualTo(learned);
    w.reps().write(x -> x.add(rep(Fixtures.TODAY, 9.4)));
    assertThat(w.weatherDesk().reps(Fixtures.TODAY).reps()).isEqualTo(13);
  }

  private Rep rep(LocalDate date, double landing_m) {
    return new Rep(0, ada.id(), date, Sequence.parse("RRL"), 4, Surface.TRACK, List.of(), landing_m, Outcome.IN, null, List.of());
  }

  @Test
  void everyLogIsFoundAndFullRunsAreThoseOfMostRunThroughs() {
    LocalDate day = Fixtures.TODAY.minusDays(5);
    w.fullRunLog().add(distance(8, 11.23, Weather.UNKNOWN));
    w.jumpLog().add(new JumpEntry(0, ada.id(), day, 12, new Phases(4.1, 3.2, 4.5, 0.10, Phases.From.TOE), null, ""));
    w.boardLog().add(new GapEntry(0, ada.id(), day, 0.07, 0, 11.99, ""));
    w.boardLog().add(new GapEntry(0, ada.id(), day, null, 0, null, ""));
    MeetSheet meet =
        w.meets()
            .add(
                new MeetSheet(
                    0, "Invented Meet", day, BoardDistance.ALL.get(0).label(), 11, null, MeetRules.DEFAULT,
                    List.of(new Entrant(0, ada.id(), ada.name()), new Entrant(0, null, "14")), List.of()));
    long entrant = meet.entrantOf(ada.id()).orElseThrow().id();
    w.meets().add(meet.id(), entrant, Attempt.valid(ada.name(), 1, 12.01), "");
    w.meets().add(meet.id(), entrant, new Attempt(ada.name(), 1, Attempt.Result.VALID, 12.11, 1.3, null, 0), "");
    w.meets().add(meet.id(), meet.entrant("14").orElseThrow().id(), Attempt.valid("14", 1, 12.50), "");
    for (int steps : new int[] {14, 12, 14}) {
      w.runThroughs().add(new RunThroughEntry(0, ada.id(), day, RunThrough.toGap(steps, 2.0 * steps, 0.1, null, null), ""));
    }
    List<FoundDistance> found = w.fullRunLog().everybody();
    assertThat(found).extracting(FoundDistance::where).containsExactly(Where.BOARD, Where.MEET, Where.PHASES, Where.DISTANCE);
    assertThat(found).extracting(FoundDistance::steps).containsExactly(null, null, 12, 8);
    assertThat(found.get(1).distance_m()).isEqualTo(12.11);
    assertThat(found.get(1).weather()).isEqualTo(Weather.gauge(1.3));
    assertThat(found.get(2).distance_m()).isEqualTo(11.70, within(1e-9));
    assertThat(w.fullRunLog().fullRuns()).containsExactly(Map.entry(ada.id(), 14));
    FullRunAnswer answer = w.fullRunDesk().answer(ada, null, Fixtures.TODAY);
    assertThat(answer.steps()).isEqualTo(14);
    assertThat(Objects.requireNonNull(answer.asked()).level_m().p50()).isBetween(11.5, 12.6);
  }

  /** One of 2.90 m made the page of everybody refuse; one over the line counted as if it were legal. */
  @Test
  void phasesThatAreNoJumpOfTheEventOrAFoulAreLeftOut() {
    LocalDate day = Fixtures.TODAY.minusDays(5);
    w.jumpLog().add(new JumpEntry(0, ada.id(), day, 8, new Phases(1.5, 1.2, 1.8, 1.60, Phases.From.TOE), null, ""));
    w.jumpLog().add(new JumpEntry(0, ada.id(), day, 8, new Phases(4.1, 3.2, 4.5, -0.10, Phases.From.TOE), null, ""));
    assertThat(w.fullRunLog().everybody()).isEmpty();
    assertThat(w.fullRunDesk().answer(ada, null, Fixtures.TODAY).missing()).isNotNull();
  }

  /** A long jump of 6 m is also a length somebody could triple-jump: only the event keeps it out. */
  @Test
  void longJumpsTellNothingOfTheTripleJumpsFullRun() {
    LocalDate day = Fixtures.TODAY.minusDays(5);
    w.fullRunLog().add(distance(8, 11.23, Weather.UNKNOWN));
    w.boardLog().add(new GapEntry(0, ada.id(), day, Event.LONG_JUMP, 0.07, 0, 6.12, ""));
    MeetRules rules = MeetRules.DEFAULT.of(Event.LONG_JUMP);
    MeetSheet meet = w.meets().add(MeetSheet.of("Invented Meet", day, BoardDistance.of(Event.LONG_JUMP).get(0), null, rules));
    Entrant who = w.meets().enter(meet.id(), new Entrant(0, ada.id(), ada.name()));
    w.meets().add(meet.id(), who.id(), Attempt.valid(Event.LONG_JUMP, ada.name(), 1, 6.21), "");
    w.runThroughs().add(new RunThroughEntry(0, ada.id(), day, Event.LONG_JUMP, RunThrough.toGap(18, 36.0, 0.1, null, null), ""));
    assertThat(w.fullRunLog().everybody()).extracting(FoundDistance::where).containsExactly(Where.DISTANCE);
    assertThat(w.fullRunLog().fullRuns()).isEmpty();

    MeetSheet coming = w.meets().add(MeetSheet.of("Invented open", Fixtures.TODAY.plusDays(9), BoardDistance.of(Event.LONG_JUMP).get(0), null, rules));
    w.meets().enter(coming.id(), new Entrant(0, ada.id(), ada.name()));
    FullRunAnswer jumps = w.fullRunDesk().answer(ada, 12, Fixtures.TODAY);
    assertThat(w.chanceDesk().answer(ada, jumps, 12, Fixtures.TODAY.plusDays(20), List.of(), null, Fixtures.TODAY).missing())
        .as("no triple jump is entered").contains("No meet of " + ada.name());
  }

  /** The best stands in any log; a foul, and what was measured from the toe alone, is no mark; one jump in two logs is one. */
  @Test
  void theBestOfAnEventIsTheBestOfEveryLog() {
    LocalDate day = Fixtures.TODAY.minusDays(5);
    w.jumpLog().add(new JumpEntry(0, ada.id(), day, 12, new Phases(4.1, 3.2, 4.5, 0.10, Phases.From.TOE), null, ""));
    w.jumpLog().add(new JumpEntry(0, ada.id(), day, 12, new Phases(4.4, 3.4, 4.7, -0.02, Phases.From.BOARD), null, "a foul"));
    w.jumpLog().add(new JumpEntry(0, ada.id(), day, 12, new Phases(4.4, 3.4, 4.7, null, Phases.From.TOE), null, "from the toe"));
    w.boardLog().add(new GapEntry(0, ada.id(), day, 0.10, 0, 11.70, ""));
    assertThat(triple()).isEqualTo(new EventsAnswer.Marks(Event.TRIPLE_JUMP, 1, new EventsAnswer.Mark(day, 11.70, null, null), null));
    w.fullRunLog().add(distance(14, 11.95, Weather.UNKNOWN));
    assertThat(triple().count()).isEqualTo(2);
    assertThat(triple().best()).isEqualTo(new EventsAnswer.Mark(Fixtures.TODAY.minusDays(3), 11.95, 14, null));
    MeetSheet meet = w.meets().add(MeetSheet.of("Invented Meet", Fixtures.TODAY.minusDays(2), BoardDistance.ALL.get(0), null, MeetRules.DEFAULT));
    Entrant who = w.meets().enter(meet.id(), new Entrant(0, ada.id(), ada.name()));
    w.meets().add(meet.id(), who.id(), Attempt.valid(ada.name(), 1, 11.95), "");
    assertThat(triple().best().from()).as("of two alike that of the meet").isEqualTo("in Invented Meet, 10 May 2026");
  }

  private EventsAnswer.Marks triple() {
    return w.eventsDesk().answer(ada, w.people().person(ada.id()), Fixtures.TODAY).marks().get(0);
  }

  /** Only those from the day on, with the athlete on their list, oldest first. */
  @Test
  void theMeetsToComeOfAnAthleteAreFound() {
    List<MeetSheet> kept = new ArrayList<>();
    for (int day : new int[] {30, -1, 1, 0}) {
      MeetSheet meet = w.meets().add(MeetSheet.of("Invented Meet", Fixtures.TODAY.plusDays(day), BoardDistance.ALL.get(0), null, MeetRules.DEFAULT));
      w.meets().enter(meet.id(), new Entrant(0, ada.id(), ada.name()));
      kept.add(w.meets().byId(meet.id()).orElseThrow());
    }
    MeetSheet others = w.meets().add(MeetSheet.of("Invented open", Fixtures.TODAY.plusDays(2), BoardDistance.ALL.get(0), null, MeetRules.DEFAULT));
    w.meets().enter(others.id(), new Entrant(0, null, "14"));
    assertThat(w.meets().withAthlete(ada.id(), Fixtures.TODAY.plusDays(1))).containsExactly(kept.get(2), kept.get(0));
    assertThat(w.meets().withAthlete(ada.id(), Fixtures.TODAY.minusDays(1))).containsExactly(kept.get(1), kept.get(3), kept.get(2), kept.get(0));
    w.meets().withdraw(kept.get(0).id(), kept.get(0).entrantOf(ada.id()).orElseThrow().id());
    assertThat(w.meets().withAthlete(ada.id(), Fixtures.TODAY.plusDays(1))).containsExactly(kept.get(2));
  }

  @Test
  void theDayOfAMeetIsReplacedAndGoesWithTheMeet() {
    MeetSheet meet = w.meets().add(MeetSheet.of("Invented Meet", Fixtures.TODAY, BoardDistance.ALL.get(0), null, MeetRules.DEFAULT));
    assertThat(w.meetDays().day(meet.id())).isEmpty();
    w.meetDays().keep(new MeetDay(meet.id(), LocalTime.of(14, 30), 30, 60, null, 2, ""));
    MeetDay better = new MeetDay(meet.id(), LocalTime.of(15, 5), 20, 45, -1.2, 0.5, "cold");
    w.meetDays().keep(better);
    assertThat(w.meetDays().day(meet.id())).contains(better);
    w.meets().enter(meet.id(), new Entrant(0, ada.id(), ada.name()));
    DaySheet sheet = w.dayDesk().sheet(w.meets().byId(meet.id()).orElseThrow());
    assertThat(sheet.marks()).singleElement().satisfies(m -> assertThat(m.first()).isEqualTo(LocalTime.of(15, 5)));
    w.meets().remove(meet.id());
    assertThat(w.meetDays().day(meet.id())).isEmpty();
    assertThatThrownBy(() -> w.meetDays().keep(better)).isInstanceOf(RefusedException.class).hasMessageContaining("not in the store");
  }

  /** A distance loads the legs as a jump does; the same jump with its lengths is one jump. */
  @Test
  void aDistanceLoadsTheLegsOnce() {
    LocalDate day = Fixtures.TODAY.minusDays(3);
    w.fullRunLog().add(distance(8, 11.23, Weather.UNKNOWN));
    w.fullRunLog().add(distance(8, 11.30, Weather.UNKNOWN));
    assertThat(contacts(day)).isEqualTo(6);
    w.jumpLog().add(new JumpEntry(0, ada.id(), day, 8, Phases.of(4.0, 3.1, 4.13), null, ""));
    assertThat(contacts(day)).isEqualTo(6);
    w.jumpLog().add(new JumpEntry(0, ada.id(), day, 12, Phases.of(4.0, 3.1, 4.5), null, ""));
    assertThat(contacts(day)).isEqualTo(9);
    for (double distance : new double[] {11.30, 11.23, 11.60}) {
      w.boardLog().add(new GapEntry(0, ada.id(), day, 0.07, 0, distance, ""));
    }
    assertThat(contacts(day)).as("the same three jumps by their take-offs at the board").isEqualTo(9);
    assertThat(w.workLog().first(List.of(ada))).containsEntry(ada.id(), day);
  }

  private int contacts(LocalDate day) {
    return Objects.requireNonNull(w.workLog().since(List.of(ada), day).get(ada.id())).stream()
        .flatMap(d -> d.work().stream())
        .mapToInt(x -> x.reps() * x.sequence().contacts().size())
        .sum();
  }
}
