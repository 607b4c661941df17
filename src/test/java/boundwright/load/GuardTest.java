package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.load.Finding.Rule;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every boundary of every limit: the last value allowed, the first of caution, the last of it, the first refused. */
class GuardTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);
  private static final Guard IN_SEASON = new Guard(GuardLimits.DEFAULT, Season.IN_SEASON);

  private static DayLoad day(LocalDate date, int contacts, int steps, Surface surface) {
    List<Work> work = new ArrayList<>();
    int tens = contacts / 10;
    if (tens > 0) {
      work.add(new Work(Sequence.parse("RL x5"), tens, steps, surface));
    }
    if (contacts % 10 > 0) {
      work.add(new Work(Sequence.parse("RL x5").first(contacts % 10), 1, steps, surface));
    }
    return new DayLoad(date, work);
  }

  private static DayLoad today(int contacts) {
    return day(TODAY, contacts, 2, Surface.GRASS);
  }

  private static LegCare growing() {
    return new LegCare(true, TODAY.minusWeeks(2), List.of(), List.of());
  }

  private static LegCare pain(boolean growing, int level, @Nullable Boolean settled, int daysAgo) {
    return new LegCare(growing, TODAY.minusYears(1), List.of(new Pain(1, TODAY.minusDays(daysAgo), "left shin", level, settled, false)), List.of());
  }

  private static Answer of(Verdict v, Rule rule) {
    return v.findings().stream().filter(f -> f.rule() == rule).findFirst().map(Finding::answer).orElseThrow();
  }

  /** Potach and Chu 2016 (second-hand) in season; Chu 1998 (memory) otherwise. */
  @ParameterizedTest
  @CsvSource({
    "IN_SEASON, BEGINNER, 80, 100",
    "IN_SEASON, INTERMEDIATE, 100, 120",
    "IN_SEASON, ADVANCED, 120, 140",
    "OFF_SEASON, BEGINNER, 60, 100",
    "OFF_SEASON, INTERMEDIATE, 100, 150",
    "OFF_SEASON, ADVANCED, 120, 200",
    "PRE_SEASON, BEGINNER, 100, 250",
    "PRE_SEASON, INTERMEDIATE, 150, 300",
    "PRE_SEASON, ADVANCED, 150, 450"
  })
  void sessionContacts(Season season, Level level, int caution, int refuse) {
    Guard guard = new Guard(GuardLimits.DEFAULT, season);
    assertThat(guard.sessionContacts(level, today(caution)).answer()).isEqualTo(Answer.ALLOWED);
    assertThat(guard.sessionContacts(level, today(caution + 1)).answer()).isEqualTo(Answer.CAUTION);
    assertThat(guard.sessionContacts(level, today(refuse)).answer()).isEqualTo(Answer.CAUTION);
    Finding over = guard.sessionContacts(level, today(refuse + 1));
    assertThat(over.answer()).isEqualTo(Answer.REFUSED);
    assertThat(over.limit()).isEqualTo(refuse);
    assertThat(over.value()).isEqualTo(refuse + 1);
    assertThat(over.said()).contains(String.valueOf(refuse)).contains("Take out a set");
  }

  /** Johnson et al. 2011 (read): 50-60 jumps, twice a week, for 8 to 10 weeks. */
  @Test
  void growingAthletes() {
    List<DayLoad> none = List.of();
    assertThat(IN_SEASON.growingContacts(growing(), none, today(50)).orElseThrow().answer()).isEqualTo(Answer.ALLOWED);
    assertThat(IN_SEASON.growingContacts(growing(), none, today(51)).orElseThrow().answer()).isEqualTo(Answer.CAUTION);
    assertThat(IN_SEASON.growingContacts(growing(), none, today(60)).orElseThrow().answer()).isEqualTo(Answer.CAUTION);
    assertThat(IN_SEASON.growingContacts(growing(), none, today(61)).orElseThrow().answer()).isEqualTo(Answer.REFUSED);
    LegCare tenWeeks = new LegCare(true, TODAY.minusWeeks(10), List.of(), List.of());
    LegCare almost = new LegCare(true, TODAY.minusWeeks(10).plusDays(1), List.of(), List.of());
    assertThat(IN_SEASON.growingContacts(tenWeeks, none, today(61))).isEmpty();
    assertThat(IN_SEASON.growingContacts(almost, none, today(61))).isPresent();
    assertThat(IN_SEASON.growingContacts(LegCare.NONE, none, today(61))).isEmpty();
    List<DayLoad> one = List.of(day(TODAY.minusDays(3), 40, 0, Surface.GRASS));
    List<DayLoad> two = List.of(day(TODAY.minusDays(6), 40, 0, Surface.GRASS), day(TODAY.minusDays(3), 40, 0, Surface.GRASS));
    List<DayLoad> older = List.of(day(TODAY.minusDays(7), 40, 0, Surface.GRASS), day(TODAY.minusDays(3), 40, 0, Surface.GRASS));
    assertThat(IN_SEASON.growingSessions(growing(), one, today(40)).orElseThrow().answer()).isEqualTo(Answer.ALLOWED);
    assertThat(IN_SEASON.growingSessions(growing(), two, today(40)).orElseThrow().answer()).isEqualTo(Answer.CAUTION);
    assertThat(IN_SEASON.growingSessions(growing(), older, today(40)).orElseThrow().answer()).isEqualTo(Answer.ALLOWED);
  }

  /** 48-72 h between sessions (read), counted in days. */
  @ParameterizedTest
  @CsvSource({"1, REFUSED", "2, CAUTION", "3, ALLOWED", "14, ALLOWED"})
  void spacing(int days, Answer answer) {
    List<DayLoad> hard = List.of(day(TODAY.minusDays(days), 60, 0, Surface.GRASS));
    assertThat(IN_SEASON.spacing(hard, today(60)).orElseThrow().answer()).isEqualTo(answer);
  }

  @Test
  void spacingAsksOnlyBetweenHardSessions() {
    assertThat(IN_SEASON.spacing(List.of(day(TODAY.minusDays(1), 59, 5, Surface.GRASS)), today(60))).isEmpty();
    assertThat(IN_SEASON.spacing(List.of(day(TODAY.minusDays(1), 60, 0, Surface.GRASS)), today(59))).isEmpty();
    assertThat(IN_SEASON.spacing(List.of(day(TODAY.minusDays(1), 10, 6, Surface.GRASS)), today(60))).isPresent();
    assertThat(IN_SEASON.spacing(List.of(day(TODAY.minusDays(15), 60, 6, Surface.GRASS)), today(60))).isEmpty();
  }

  /** Caution at 10 %, stop at 30 %: settings; over 100 contacts a week before, so a contact is a per cent. */
  @ParameterizedTest
  @CsvSource({"110, ALLOWED", "111, CAUTION", "130, CAUTION", "131, REFUSED", "20, ALLOWED"})
  void ramp(int contacts, Answer answer) {
    List<DayLoad> before = List.of(day(TODAY.minusDays(9), 100, 0, Surface.GRASS));
    assertThat(IN_SEASON.ramp(before, today(contacts)).orElseThrow().answer()).isEqualTo(answer);
  }

  /** From nothing to 20 or to the floor of 60 contacts does not trip it; a third more than the floor does. */
  @ParameterizedTest
  @CsvSource({"20, ALLOWED", "60, ALLOWED", "66, ALLOWED", "67, CAUTION", "78, CAUTION", "79, REFUSED"})
  void rampHasAFloor(int contacts, Answer answer) {
    assertThat(IN_SEASON.ramp(List.of(), today(contacts)).orElseThrow().answer()).isEqualTo(answer);
  }

  @Test
  void rampCountsTheSevenDaysTogether() {
    List<DayLoad> days =
        List.of(day(TODAY.minusDays(13), 100, 0, Surface.GRASS), day(TODAY.minusDays(6), 60, 0, Surface.GRASS));
    assertThat(IN_SEASON.ramp(days, today(50)).orElseThrow().value()).isEqualTo(10.0);
    assertThat(IN_SEASON.ramp(days, today(51)).orElseThrow().answer()).isEqualTo(Answer.CAUTION);
  }

  /** Common practice: the further back the start, the fewer single-leg series. */
  @ParameterizedTest
  @CsvSource({
    "RR, 6, INTERMEDIATE, ", "RRR, 5, INTERMEDIATE, ", "RRR, 6, INTERMEDIATE, CAUTION", "LLL, 9, ADVANCED, CAUTION",
    "RRR, 10, ADVANCED, REFUSED", "RRR, 6, BEGINNER, REFUSED", "RRR, 5, BEGINNER, ", "RRL RRL, 12, ADVANCED, "
  })
  void singleLegSeries(String sequence, int steps, Level level, @Nullable Answer answer) {
    DayLoad d = new DayLoad(TODAY, List.of(new Work(Sequence.parse(sequence), 1, steps, Surface.GRASS)));
    Optional<Answer> found = IN_SEASON.singleLegSeries(level, LegCare.NONE, d).map(Finding::answer);
    assertThat(found).isEqualTo(Optional.ofNullable(answer));
    if (answer == Answer.CAUTION) {
      assertThat(IN_SEASON.singleLegSeries(level, growing(), d).orElseThrow().answer()).isEqualTo(Answer.REFUSED);
    }
  }

  @Test
  void surfaces() {
    assertThat(IN_SEASON.surface(day(TODAY, 10, 0, Surface.GRASS)).answer()).isEqualTo(Answer.ALLOWED);
    assertThat(IN_SEASON.surface(day(TODAY, 10, 0, Surface.SPRUNG_FLOOR)).answer()).isEqualTo(Answer.ALLOWED);
    assertThat(IN_SEASON.surface(day(TODAY, 10, 0, Surface.RAISED_RUNWAY)).answer()).isEqualTo(Answer.ALLOWED);
    assertThat(IN_SEASON.surface(day(TODAY, 10, 0, Surface.TRACK)).answer()).isEqualTo(Answer.CAUTION);
    assertThat(IN_SEASON.surface(day(TODAY, 10, 0, Surface.CONCRETE)).answer()).isEqualTo(Answer.REFUSED);
  }

  /** Thomee 1997, Silbernagel et al. 2007 (memory); stricter for growing athletes, to whom those limits do not apply. */
  @ParameterizedTest
  @CsvSource({
    "false, 0, true, ALLOWED", "false, 2, true, ALLOWED", "false, 3, true, CAUTION", "false, 5, true, CAUTION",
    "false, 6, true, REFUSED", "false, 1, false, REFUSED", "false, 0, false, ALLOWED", "true, 0, true, ALLOWED",
    "true, 1, true, CAUTION", "true, 2, true, CAUTION", "true, 3, true, REFUSED"
  })
  void pain(boolean growing, int level, boolean settled, Answer answer) {
    assertThat(IN_SEASON.pain(pain(growing, level, settled, 1), TODAY).orElseThrow().answer()).isEqualTo(answer);
  }

  @Test
  void painIsForgottenAfterAWeekAndWatchedWhenItRises() {
    assertThat(IN_SEASON.pain(pain(false, 8, true, 6), TODAY)).isPresent();
    assertThat(IN_SEASON.pain(pain(false, 8, true, 7), TODAY)).isEmpty();
    LegCare rising =
        new LegCare(false, null, List.of(new Pain(1, TODAY.minusDays(9), "heel", 1, true, false), new Pain(2, TODAY, "heel", 2, null, false)), List.of());
    assertThat(IN_SEASON.pain(rising, TODAY).orElseThrow().answer()).isEqualTo(Answer.CAUTION);
  }

  @Test
  void aMedicalHoldCannotBeOverriddenAndEndsOnlyWithAClinicianAndADate() {
    MedicalHold hold = new MedicalHold(1, TODAY.minusDays(3), "set by the physician", null, null);
    LegCare held = new LegCare(false, null, List.of(), List.of(hold));
    Verdict v = IN_SEASON.judge(Level.ADVANCED, held, List.of(), today(10));
    assertThat(v.answer()).isEqualTo(Answer.REFUSED);
    assertThat(v.held()).isTrue();
    assertThat(of(v, Rule.MEDICAL_HOLD)).isEqualTo(Answer.REFUSED);
    assertThatThrownBy(() -> new MedicalHold(1, TODAY, "x", "Dr Invented", null)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new MedicalHold(1, TODAY, "x", " ", TODAY)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new MedicalHold(1, TODAY, "x", "Dr Invented", TODAY.minusDays(1))).isInstanceOf(RefusedException.class);
    MedicalHold ended = new MedicalHold(1, TODAY.minusDays(3), "x", "Dr Invented", TODAY);
    assertThat(ended.holds(TODAY.minusDays(1))).isTrue();
    assertThat(ended.holds(TODAY)).isFalse();
    assertThat(hold.holds(TODAY.minusDays(4))).isFalse();
  }

  @Test
  void aSignToReferStopsUntilAClinicianEndsTheHold() {
    Pain sign = new Pain(1, TODAY.minusDays(2), "front of shin", 4, true, true);
    LegCare open = new LegCare(false, null, List.of(sign), List.of());
    assertThat(IN_SEASON.refer(open, TODAY).orElseThrow().mayBeOverridden()).isFalse();
    LegCare cleared =
        new LegCare(false, null, List.of(sign), List.of(new MedicalHold(1, TODAY.minusDays(2), "x", "Dr Invented", TODAY)));
    assertThat(IN_SEASON.refer(cleared, TODAY)).isEmpty();
  }

  /** Law: more contacts, less rest or more pain never make the answer milder. */
  @Test
  void worseNeverGetsAMilderAnswer() {
    long seed = 515;
    Random r = new Random(seed);
    for (int i = 0; i < 500; i++) {
      int contacts = 1 + r.nextInt(150);
      int steps = r.nextInt(13);
      int gap = 2 + r.nextInt(5);
      int level = r.nextInt(8);
      Level who = List.of(Level.values()).get(r.nextInt(3));
      Answer base = judge(who, contacts, steps, gap, level);
      assertThat(judge(who, contacts + 1 + r.nextInt(30), steps, gap, level)).as("seed %s, %s", seed, i).isGreaterThanOrEqualTo(base);
      assertThat(judge(who, contacts, steps, gap - 1, level)).as("seed %s, %s", seed, i).isGreaterThanOrEqualTo(base);
      assertThat(judge(who, contacts, steps, gap, level + 1)).as("seed %s, %s", seed, i).isGreaterThanOrEqualTo(base);
    }
  }

  private static Answer judge(Level who, int contacts, int steps, int gap, int pain) {
    List<DayLoad> before = List.of(day(TODAY.minusDays(gap), 70, 2, Surface.GRASS), day(TODAY.minusDays(10), 140, 2, Surface.GRASS));
    return IN_SEASON.judge(who, pain(false, pain, true, 1), before, day(TODAY, contacts, steps, Surface.GRASS)).answer();
  }

  @Test
  void everyFindingNamesItsSourceAndUnit() {
    Verdict v = IN_SEASON.judge(Level.BEGINNER, pain(true, 4, false, 0), List.of(day(TODAY.minusDays(1), 90, 6, Surface.TRACK)), day(TODAY, 200, 12, Surface.CONCRETE));
    assertThat(v.findings()).hasSizeGreaterThan(4).allSatisfy(f -> {
      assertThat(f.source().citation()).isNotBlank();
      assertThat(f.unit()).isNotBlank();
      assertThat(f.said()).endsWith(".");
    });
    assertThat(v.findings().get(0).answer()).isEqualTo(Answer.REFUSED);
  }

  @Test
  void limitsUpsideDownAreRefused() {
    assertThatThrownBy(() -> new Band(30, 10)).isInstanceOf(RefusedException.class).hasMessageContaining("wrong way round");
  }
}
