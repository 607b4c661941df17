package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Logbook;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.flight.SquadPrior;
import boundwright.footfall.Sequence;
import boundwright.phone.Packer;
import boundwright.runway.Drill;
import boundwright.runway.MarkAdvisor;
import boundwright.runway.Rungs;
import boundwright.track.Deed;
import boundwright.track.Made;
import boundwright.track.TrackDesk;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is learned beside the questions, on the real database: how often, that it is right, and that a kill before it is done loses nothing. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class LearnedBesideTest {
  private static final Sequence DRILL = Sequence.parse("RRL x2");
  private static final LocalDate LATE = Fixtures.TODAY.minusDays(3);

  @TempDir Path dir;
  private Workbench w;
  /** What was handed in to be done beside; nothing is done before the test does it. */
  private final List<Runnable> beside = new ArrayList<>();
  /** How often what was learned of somebody was kept. */
  private int kept;
  /** Done once, just before a new snapshot gets its number. */
  private Runnable meanwhile = () -> {};
  private Logbook logbook;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    logbook = new Logbook(counting(new SqlReps(w.database())), w.athletes(), beside::add);
  }

  @AfterEach
  void close() {
    w.close();
  }

  private static <T> T standIn(Class<T> type, InvocationHandler answers) {
    return type.cast(Proxy.newProxyInstance(type.getClassLoader(), new Class<?>[] {type}, answers));
  }

  private RepStore counting(RepStore real) {
    return standIn(RepStore.class, (self, method, arguments) -> {
      if (method.getName().equals("reserveSnapshot")) {
        meanwhile.run();
      }
      if (!method.getName().startsWith("write")) {
        return invoke(real, method, arguments);
      }
      @SuppressWarnings("unchecked")
      Function<RepStore.Writer, Object> work = (Function<RepStore.Writer, Object>) arguments[0];
      return method.getName().equals("write") ? real.write(x -> work.apply(counting(x))) : real.writeLong(x -> work.apply(counting(x)));
    });
  }

  private RepStore.Writer counting(RepStore.Writer real) {
    return standIn(RepStore.Writer.class, (self, method, arguments) -> {
      kept += method.getName().equals("keep") ? 1 : 0;
      return invoke(real, method, arguments);
    });
  }

  private static Object invoke(Object real, java.lang.reflect.Method method, Object[] arguments) throws Throwable {
    try {
      return method.invoke(real, arguments);
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }

  private void doBeside() {
    List<Runnable> now = List.copyOf(beside);
    beside.clear();
    now.forEach(Runnable::run);
  }

  private Athlete athlete(String name, int reps, LocalDate last) {
    Athlete a = w.athletes().add(Fixtures.athlete(name));
    Random random = new Random(name.hashCode());
    double usual = 15 + random.nextGaussian();
    List<Rep> all = new ArrayList<>();
    for (int i = 0; i < reps; i++) {
      all.add(new Rep(0, a.id(), last.minusDays((reps - 1 - i) / 10), DRILL, 4, Surface.TRACK, List.of(), usual + 0.2 * random.nextGaussian(), null, null, List.of()));
    }
    w.logbook().logAll(all);
    return a;
  }

  private List<Deed> batch(Athlete a) {
    List<Deed> out = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      Made made = new Made(LATE.atTime(LocalTime.NOON).toInstant(ZoneOffset.UTC), 0);
      Rep rep = new Rep(0, a.id(), LATE, DRILL, 4, Surface.TRACK, List.of(), null, i % 3 == 0 ? Outcome.SHORT : Outcome.IN, 12 + i / 50.0, false, List.of());
      out.add(new Deed.Done(String.format("%032x", i + 1), rep, made));
    }
    return out;
  }

  private TrackDesk track() {
    return new TrackDesk(logbook, w.reps(), w.advisor(), new SqlTaps(w.database()), Fixtures.CLOCK);
  }

  /** What a machine without any of this learns from the same reps. */
  private byte[] fromTheStart(Athlete a) {
    FlightModel model = FlightModel.prior(w.athletes().profile(a), w.reps().snapshot().map(RepStore.Snapshot::prior).orElse(SquadPrior.NONE));
    for (Rep r : w.reps().inOrder(a.id())) {
      model = model.learn(r);
    }
    return model.toBytes();
  }

  @Test
  void thirtyLateRepsOfAnAthleteWithTwoThousandAreLearnedOnceAfterTheAnswer() {
    Athlete a = athlete("Ada Longshore", 2000, Fixtures.TODAY);
    byte[] before = w.logbook().model(a).toBytes();
    assertThat(track().bring(batch(a))).hasSize(30).allMatch(b -> b.refused() == null);
    assertThat(kept).as("learned in the question").isZero();
    assertThat(w.reps().inOrder(a.id())).hasSize(2030);
    assertThat(logbook.learnedSoFar(a.id()).orElseThrow().now().toBytes()).as("what a phone is told until then").isEqualTo(before);
    doBeside();
    assertThat(kept).as("learned beside").isEqualTo(1);
    assertThat(logbook.model(a).toBytes()).isEqualTo(fromTheStart(a)).isNotEqualTo(before);
    assertThat(logbook.learnedSoFar(a.id()).orElseThrow().now().toBytes()).isEqualTo(fromTheStart(a));
  }

  @Test
  void whoAsksBeforeItIsDoneGetsTheNewModelAndItIsStillLearnedOnce() {
    Athlete a = athlete("Bo Farfield", 400, Fixtures.TODAY);
    track().bring(batch(a));
    assertThat(logbook.model(a).toBytes()).isEqualTo(fromTheStart(a));
    doBeside();
    assertThat(kept).isEqualTo(1);
  }

  @Test
  void aKillBeforeItIsDoneLosesNothing() {
    Athlete a = athlete("Cy Endrun", 400, Fixtures.TODAY);
    track().bring(batch(a));
    w.close();
    w = Stores.open(dir, Fixtures.CLOCK);
    assertThat(w.reps().inOrder(a.id())).hasSize(430);
    assertThat(w.logbook().model(a).toBytes()).isEqualTo(fromTheStart(a));
  }

  @Test
  void aDaysFirstQuestionIsAnsweredFromTheSnapshotThatStands() {
    List<Athlete> squad = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      squad.add(athlete("Athlete " + i, 16, Fixtures.TODAY.minusDays(20)));
    }
    w.logbook().dayBegins(Fixtures.TODAY.minusDays(10));
    long first = w.reps().snapshotNumber();
    for (int i = 6; i < 10; i++) {
      squad.add(athlete("Athlete " + i, 16, Fixtures.TODAY.minusDays(5)));
    }
    List<String> before = squad.stream().map(a -> HexFormat.of().formatHex(w.logbook().model(a).toBytes())).toList();
    logbook.dayBegins(Fixtures.TODAY);
    logbook.dayBegins(Fixtures.TODAY);
    assertThat(beside).hasSize(1);
    assertThat(squad.stream().map(a -> HexFormat.of().formatHex(logbook.model(a).toBytes())).toList()).isEqualTo(before);
    assertThat(kept).as("learned in the question").isZero();
    Athlete hopping = squad.get(2);
    meanwhile = () -> w.logbook().log(Fixtures.tap(hopping.id(), Fixtures.TODAY));
    doBeside();
    assertThat(w.reps().snapshotNumber()).isGreaterThan(first);
    assertThat(kept).as("everybody but who was logged meanwhile").isEqualTo(9);
    for (Athlete a : squad) {
      assertThat(logbook.model(a).toBytes()).as(a.name()).isEqualTo(fromTheStart(a));
    }
    assertThat(kept).as("that one when asked").isEqualTo(10);
  }

  /** As after an update whose models are others, or in a folder that was filled by another program. */
  private void nothingIsLearned() {
    w.database().write(h -> h.execute("DELETE FROM learned"));
  }

  @Test
  void whoHasManyRepsAndWasNotLearnedIsKnownAtOnceFromTheNewest() {
    Athlete a = athlete("Di Newstart", 2000, Fixtures.TODAY);
    Athlete few = athlete("Ed Fewreps", 200, Fixtures.TODAY);
    nothingIsLearned();
    int[] read = new int[1];
    logbook = new Logbook(counted(counting(new SqlReps(w.database())), read), w.athletes(), beside::add);
    FlightModel first = Objects.requireNonNull(logbook.known(List.of(a, few)).get(a.id())).flights();
    assertThat(first.reps()).as("reps that were learned in the question").isEqualTo(240);
    assertThat(read[0]).as("reps read of both").isLessThan(2000);
    assertThat(logbook.isFromNewest(a.id(), first)).isTrue();
    assertThat(logbook.model(a)).as("not learned twice").isSameAs(first);
    assertThat(logbook.model(few).toBytes()).as("who has few reps is learned whole").isEqualTo(fromTheStart(few));
    assertThat(logbook.isFromNewest(few.id(), logbook.model(few))).isFalse();
    assertThat(beside).hasSize(1);
    doBeside();
    assertThat(logbook.isFromNewest(a.id(), first)).as("no more").isFalse();
    assertThat(logbook.model(a).toBytes()).isEqualTo(fromTheStart(a));
    var said = first.forecast(DRILL, 4, Surface.TRACK, Fixtures.TODAY).landing();
    var whole = logbook.model(a).forecast(DRILL, 4, Surface.TRACK, Fixtures.TODAY).landing();
    assertThat(said.p50()).as("the mark until then").isCloseTo(whole.p50(), within(0.05));
    assertThat(said.halfWidth()).isCloseTo(whole.halfWidth(), withinPercentage(10));
  }

  @Test
  void aRepLoggedMeanwhileIsIn() {
    Athlete a = athlete("Fay Between", 400, Fixtures.TODAY.minusDays(1));
    nothingIsLearned();
    logbook.model(a);
    logbook.log(Fixtures.tap(a.id(), Fixtures.TODAY));
    assertThat(logbook.model(a).toBytes()).isEqualTo(fromTheStart(a));
    doBeside();
    assertThat(logbook.model(a).toBytes()).isEqualTo(fromTheStart(a));
    assertThat(kept).as("with the rep, and not once more").isEqualTo(1);
  }

  @Test
  void aSquadThatNobodyLearnedIsLearnedOnceThoughPagesAskMeanwhile() {
    List<Athlete> squad = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      squad.add(athlete("Athlete " + i, 300, Fixtures.TODAY.minusDays(20)));
    }
    nothingIsLearned();
    logbook.dayBegins(Fixtures.TODAY);
    meanwhile = () -> logbook.known(squad);
    doBeside();
    doBeside();
    assertThat(w.reps().snapshotNumber()).isPositive();
    assertThat(kept).as("each of six, once").isEqualTo(6);
    for (Athlete a : squad) {
      assertThat(logbook.model(a).toBytes()).as(a.name()).isEqualTo(fromTheStart(a));
    }
  }

  @Test
  void whoIsJustBeingLearnedBesideIsNotWaitedFor() throws Exception {
    Athlete a = athlete("Gil Waitnot", 400, Fixtures.TODAY.minusDays(1));
    nothingIsLearned();
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch goOn = new CountDownLatch(1);
    logbook = new Logbook(held(new SqlReps(w.database()), begun, goOn), w.athletes(), beside::add);
    FlightModel first = logbook.model(a);
    Thread learning = new Thread(this::doBeside);
    learning.start();
    try {
      assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
      assertThat(CompletableFuture.supplyAsync(() -> logbook.model(a)).get(10, TimeUnit.SECONDS)).isSameAs(first);
    } finally {
      goOn.countDown();
      learning.join();
    }
    assertThat(logbook.model(a).toBytes()).isEqualTo(fromTheStart(a));
  }

  @Test
  void theWordThatTheNewestSpeakGoesWithWhatTheySaidAndIsNotKeptLonger() {
    Athlete a = athlete("Hal Nolonger", 400, Fixtures.TODAY.minusDays(1));
    nothingIsLearned();
    MarkAdvisor advisor = new MarkAdvisor(logbook, Fixtures.CLOCK, () -> Rungs.OWN, new SqlChanges(w.database()));
    Supplier<List<String>> warnings =
        () -> Objects.requireNonNull(advisor.advise(List.of(a), new Drill(DRILL, null, 1, 3, true), w.settings().settings()).get(a.id())).warnings();
    assertThat(warnings.get()).anyMatch(said -> said.startsWith("From the newest 240 reps"));
    logbook.log(Fixtures.tap(a.id(), Fixtures.TODAY));
    assertThat(warnings.get()).as("learned whole with that rep").noneMatch(said -> said.startsWith("From the newest"));
    doBeside();
    assertThat(warnings.get()).noneMatch(said -> said.startsWith("From the newest"));
  }

  /** Reading all reps of somebody waits. */
  private static RepStore held(RepStore real, CountDownLatch begun, CountDownLatch goOn) {
    return standIn(RepStore.class, (self, method, arguments) -> {
      if (method.getName().equals("inOrder")) {
        begun.countDown();
        goOn.await();
      }
      return invoke(real, method, arguments);
    });
  }

  /** A phone gets the day's reps to learn them itself, from what was known before them. */
  @Test
  void aPhoneIsNotKeptWaitingForAllReps() {
    Athlete a = athlete("Gil Pocket", 2000, Fixtures.TODAY);
    nothingIsLearned();
    int[] read = new int[1];
    RepStore store = counted(counting(new SqlReps(w.database())), read);
    logbook = new Logbook(store, w.athletes(), beside::add);
    Packer packer =
        new Packer(
            w.athletes(), store, logbook, w.settings(), w.workLog(), w.load(), w.care(), () -> w.advisor().rungs(), Packer.Tokens.only(id -> null),
            Fixtures.CLOCK);
    assertThat(packer.pack(List.of(a)).text()).contains("is=past&date=2026-05-11&");
    assertThat(read[0]).as("reps read").isLessThan(2000);
    assertThat(kept).as("learned in the question").isZero();
  }

  private static RepStore counted(RepStore real, int[] read) {
    return standIn(RepStore.class, (self, method, arguments) -> {
      Object answer = invoke(real, method, arguments);
      read[0] += method.getName().matches("inOrder|recent|since") ? ((List<?>) answer).size() : 0;
      return answer;
    });
  }
}
