package boundwright.runway;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Facility;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class MarksTest {
  private static final LocalDate DAY = LocalDate.of(2026, 4, 1);
  static final RunUp RUN_UP = new RunUp(new Estimate(5.4, 5.8, 6.2), new Estimate(6, 6.5, 7), 2);

  private static FlightModel learned(double size) {
    FlightModel m = FlightModel.prior(Profile.bare(new Athlete(1, "Invented", Level.INTERMEDIATE, Foot.RIGHT, 4)));
    for (String text : List.of("RRL", "RRL x2")) {
      Sequence s = Sequence.parse(text);
      double usual = m.forecast(s, 4, Surface.TRACK, DAY).landing().p50() * size;
      for (int i = 0; i < 12; i++) {
        m = m.learn(new Rep(0, 1, DAY.plusDays(i / 3), s, 4, Surface.TRACK, List.of(), usual, null, null, List.of()));
      }
    }
    return m;
  }

  private static MarkAdvice advise(FlightModel m, String sequence, int steps, CoachSettings settings) {
    return MarkAdvisor.advise(m, RUN_UP, Sequence.parse(sequence), steps, Surface.TRACK, settings, DAY.plusDays(20));
  }

  private static CoachSettings asking(double chance) {
    return new CoachSettings(LengthUnit.METRES, new MarkSettings(chance, 0.3, 0.3), Facility.DEFAULT, 10);
  }

  @Test
  void theChancesAtTheMarkAndAtTheEndsOfWhatWorksAreWhatIsClaimed() {
    MarkAdvice a = advise(learned(1), "RRL", 4, CoachSettings.DEFAULT);
    Window w = java.util.Objects.requireNonNull(a.window());
    MarkChances c = MarkChances.of(a.forecast(), a.settings());
    assertThat(a.chance()).isEqualTo(c.counts(a.markToSand_m()));
    assertThat(c.counts(w.min_m())).isCloseTo(0.9, within(1e-8));
    assertThat(c.counts(w.max_m())).isCloseTo(0.9, within(1e-8));
    assertThat(w.holds(a.markToSand_m())).isTrue();
  }

  /** Law: a larger asked chance never widens the window, and a closed one stays closed. */
  @Test
  void askingMoreNeverWidensTheWindow() {
    FlightModel m = learned(1);
    for (String s : List.of("RRL", "RRL x2", "RL x5", "R")) {
      double width = Double.POSITIVE_INFINITY;
      for (double chance = 0.5; chance <= 0.99; chance += 0.01) {
        Window w = advise(m, s, 4, asking(chance)).window();
        double now = w == null ? -1 : w.width();
        assertThat(now).as("%s at %s", s, chance).isLessThanOrEqualTo(width);
        width = now;
      }
    }
  }

  @Test
  void aClosedWindowSaysWhatOpensIt() {
    FlightModel guess = learned(1);
    MarkAdvice a = advise(guess, "RL x8", 4, CoachSettings.DEFAULT);
    assertThat(a.window()).isNull();
    assertThat(a.warnings().get(0)).contains("90 in 100");
    assertThat(a.openers()).extracting(Opener::way).contains(Opener.Way.FEWER_CONTACTS, Opener.Way.ONTO_GRASS);
    String cut = a.openers().get(0).said();
    int n = Integer.parseInt(cut.replaceAll(".*the first (\\d+) contact.*", "$1"));
    assertThat(advise(guess, Sequence.parse("RL x8").first(n).letters(), 4, CoachSettings.DEFAULT).window()).isNotNull();
    assertThat(advise(guess, Sequence.parse("RL x8").first(n + 1).letters(), 4, CoachSettings.DEFAULT).window()).isNull();
  }

  @Test
  void aShortRunwayIsSaid() {
    CoachSettings shortRunway =
        new CoachSettings(LengthUnit.METRES, MarkSettings.DEFAULT, new Facility("Hall", 12, 8, 30, Surface.RAISED_RUNWAY), 10);
    MarkAdvice a = advise(learned(1), "RRL x2", 4, shortRunway);
    assertThat(a.runwayNeeded_m()).isGreaterThan(12);
    assertThat(a.warnings()).anyMatch(w -> w.startsWith("The runway is too short"));
    assertThat(advise(learned(1), "RRL", 4, CoachSettings.DEFAULT).warnings()).noneMatch(w -> w.startsWith("The runway"));
  }

  /** Asked for what is shown, a mark works; asked for one rep more, none does and the sentence names what was asked. */
  @Test
  void whatIsShownIsWhatIsDecidedOn() {
    int tried = 0;
    for (double size = 0.7; size < 1.4; size += 0.05) {
      FlightModel m = learned(size);
      for (String s : List.of("RRL", "RRL x2", "RL x3", "RL x5", "RRLL RRLL")) {
        int shown = advise(m, s, 4, CoachSettings.DEFAULT).inHundred();
        if (shown < 50 || shown > 98) {
          continue;
        }
        tried++;
        MarkAdvice reached = advise(m, s, 4, asking(shown / 100.0));
        assertThat(reached.window()).as("%s x %s asked %s", s, size, shown).isNotNull();
        assertThat(reached.warnings()).noneMatch(w -> w.startsWith("No mark reaches"));
        MarkAdvice missed = advise(m, s, 4, asking((shown + 1) / 100.0));
        assertThat(missed.window()).as("%s x %s asked %s", s, size, shown + 1).isNull();
        assertThat(missed.inHundred()).isEqualTo(shown);
        assertThat(missed.warnings().get(0)).startsWith("No mark reaches " + (shown + 1) + " in 100:");
        assertThat(advise(m, s, 4, asking((shown + 0.4) / 100.0)).window()).as("a part of a rep asks for all of it").isNull();
      }
    }
    assertThat(tried).isGreaterThan(20);
  }

  private static FlightModel jumped(FlightModel from, Surface surface, int reps) {
    FlightModel m = from;
    Sequence s = Sequence.parse("RRL");
    for (int i = 0; i < reps; i++) {
      m = m.learn(new Rep(0, 1, DAY.plusDays(40), s, 4, surface, List.of(), 9.0, null, null, List.of()));
    }
    return m;
  }

  private static MarkAdvice on(FlightModel m, Surface surface) {
    return MarkAdvisor.advise(m, RUN_UP, Sequence.parse("RRL"), 4, surface, CoachSettings.DEFAULT, DAY.plusDays(41));
  }

  @Test
  void repsFromAnotherSurfaceAreNamedOnce() {
    FlightModel none = FlightModel.prior(Profile.bare(new Athlete(1, "Invented", Level.INTERMEDIATE, Foot.RIGHT, 4)));
    FlightModel grass = jumped(none, Surface.GRASS, 60);
    assertThat(on(none, Surface.TRACK).elsewhere()).isNull();
    assertThat(on(grass, Surface.GRASS).elsewhere()).isNull();
    assertThat(on(grass, Surface.GRASS).from()).isEqualTo("From 60 reps with lengths, 60 of them from 4 steps.");
    MarkAdvice track = on(grass, Surface.TRACK);
    assertThat(track.warnings()).contains("60 reps, all on grass; today's place is track.");
    assertThat(track.from()).doesNotContain("grass").doesNotContain("track");
    assertThat(MarkAdvisor.flatWarnings(track, Surface.TRACK, CoachSettings.DEFAULT)).contains("60 reps, all on grass; today's place is track.");
    FlightModel both = jumped(grass, Surface.TRACK, 14);
    assertThat(on(both, Surface.TRACK).from()).isEqualTo("From 74 reps with lengths, 74 of them from 4 steps and 14 on track.");
    assertThat(on(both, Surface.TRACK).elsewhere()).isNull();
    assertThat(on(both, Surface.SPRUNG_FLOOR).elsewhere()).isEqualTo("74 reps, 60 on grass, 14 on track; today's place is sprung floor.");
    assertThat(on(jumped(none, Surface.GRASS, 1), Surface.TRACK).elsewhere()).isEqualTo("1 rep, on grass; today's place is track.");
  }

  @Test
  void oneContactHasAWindowToo() {
    MarkAdvice a = advise(learned(1), "R", 4, CoachSettings.DEFAULT);
    assertThat(a.markToSand_m()).isPositive();
    assertThat(a.forecast().mean(1)).isZero();
    assertThat(a.chance()).isBetween(0.5, 1.0);
  }

  /** Marks change one after the other, as after taps: what is remembered of the others changes nothing. */
  @Test
  void tapesWithWhatIsRememberedAreThoseLaidAnew() {
    long seed = 7;
    Random r = new Random(seed);
    TapeMemory memory = new TapeMemory();
    List<Tapes.Wish> wishes = new java.util.ArrayList<>();
    for (int i = 0; i < 12; i++) {
      wishes.add(wish(i, r));
    }
    for (int tap = 0; tap < 25; tap++) {
      for (LengthUnit unit : LengthUnit.values()) {
        assertThat(TapePlanner.fewest(wishes, unit, memory)).as("seed %s tap %s %s", seed, tap, unit).isEqualTo(TapePlanner.fewest(wishes, unit));
      }
      int whose = r.nextInt(wishes.size());
      wishes.set(whose, wish(whose, r));
    }
  }

  private static Tapes.Wish wish(int athlete, Random r) {
    return new Tapes.Wish(
        "Athlete " + athlete, "drill", advise(learned(0.75 + 0.5 * r.nextDouble()), r.nextBoolean() ? "RRL" : "RRL x2", 4, asking(0.5 + 0.45 * r.nextDouble())));
  }

  /** The count of tapes against trying every set of candidate places: window ends suffice as candidates. */
  @Test
  void fewestTapesAgreesWithTryingEverySubset() {
    long seed = 99;
    Random r = new Random(seed);
    for (int round = 0; round < 60; round++) {
      int n = 1 + r.nextInt(9);
      List<Tapes.Wish> wishes = new java.util.ArrayList<>();
      for (int i = 0; i < n; i++) {
        wishes.add(wish(i, r));
      }
      Tapes tapes = TapePlanner.fewest(wishes, LengthUnit.METRES);
      List<Window> windows =
          wishes.stream().map(w -> w.advice().window()).filter(java.util.Objects::nonNull).map(java.util.Objects::requireNonNull).toList();
      assertThat(tapes.tapes()).as("seed %s round %s", seed, round).hasSize(bruteForce(windows));
      assertThat(tapes.proof()).hasSize(tapes.tapes().size());
      for (Tapes.Wish p : tapes.proof()) {
        for (Tapes.Wish q : tapes.proof()) {
          Window one = java.util.Objects.requireNonNull(p.advice().window());
          Window two = java.util.Objects.requireNonNull(q.advice().window());
          assertThat(p.equals(q) || one.max_m() < two.min_m() || two.max_m() < one.min_m()).isTrue();
        }
      }
      assertThat(tapes.tapes().stream().mapToInt(t -> t.serves().size()).sum()).isEqualTo(windows.size());
      for (Tapes.Tape t : tapes.tapes()) {
        for (Tapes.Wish w : t.serves()) {
          assertThat(java.util.Objects.requireNonNull(w.advice().window()).holds(t.markToSand_m())).isTrue();
        }
        for (double by = -1; by <= 1; by += 0.02) {
          double at = t.markToSand_m() + by;
          if (t.serves().stream().allMatch(w -> java.util.Objects.requireNonNull(w.advice().window()).holds(at))) {
            assertThat(leastLucky(t, at)).as("seed %s round %s", seed, round).isLessThan(leastLucky(t, t.markToSand_m()) + 0.001);
          }
        }
      }
    }
  }

  /** The smallest of the chances that a rep counts of all whom a tape would serve. */
  private static double leastLucky(Tapes.Tape tape, double at) {
    return tape.serves().stream()
        .mapToDouble(w -> MarkChances.of(w.advice().forecast(), w.advice().settings()).counts(at))
        .min()
        .orElseThrow();
  }

  private static int bruteForce(List<Window> windows) {
    int n = windows.size();
    int best = n;
    for (int set = 0; set < 1 << n; set++) {
      int chosen = set;
      boolean all =
          windows.stream()
              .allMatch(
                  w -> {
                    for (int i = 0; i < n; i++) {
                      if ((chosen >> i & 1) == 1 && w.holds(windows.get(i).max_m())) {
                        return true;
                      }
                    }
                    return false;
                  });
      if (all) {
        best = Math.min(best, Integer.bitCount(set));
      }
    }
    return n == 0 ? 0 : best;
  }
}
