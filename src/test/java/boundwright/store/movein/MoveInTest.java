package boundwright.store.movein;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Sex;
import boundwright.footfall.Foot;
import boundwright.jump.Event;
import boundwright.meet.Attempt;
import boundwright.meet.MeetRepository.AthleteAttempt;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Fixtures;
import boundwright.store.Workbench;
import boundwright.store.backup.Everything;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rosters, reps and results in columns of a coach's own: what each row becomes, in one go, and back again. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class MoveInTest {
  private static final MoveIn.Order ALL = new MoveIn.Order(false, false, "file.csv");
  private static final MoveIn.Order GOOD = new MoveIn.Order(true, false, "file.csv");

  @TempDir Path dir;
  private Workbench w;
  private MoveIn moveIn;

  @BeforeEach
  void open() {
    w = Workbench.open(dir, Fixtures.CLOCK);
    moveIn = new MoveIn(w);
  }

  @AfterEach
  void close() {
    w.close();
  }

  private static Sheet sheet(String text) {
    return Sheet.read(text.getBytes(StandardCharsets.UTF_8), null, null);
  }

  private Columns columns(Sheet sheet, @Nullable DayOrder order) {
    Columns c = moveIn.columns(moveIn.kind(sheet), sheet);
    return order == null ? c : c.withOrder(order);
  }

  private MoveIn.Result take(String text, @Nullable DayOrder order, MoveIn.Order what) {
    Sheet sheet = sheet(text);
    return moveIn.take(sheet, columns(sheet, order), what);
  }

  private List<String> told(String text, @Nullable DayOrder order) {
    Sheet sheet = sheet(text);
    return moveIn.look(sheet, columns(sheet, order)).rows().stream().map(r -> r.line() + " " + r.state().label() + ": " + r.told()).toList();
  }

  /** Rows of every table but those that say what was chosen. */
  private Map<String, Long> counts() {
    Map<String, Long> out = new TreeMap<>();
    String[] table = {""};
    w.tellEverything(
        new Everything.Listener() {
          @Override
          public void version(int version) {}

          @Override
          public void table(String name) {
            table[0] = name;
          }

          @Override
          public void row(Map<String, @Nullable Object> values) {
            out.merge(table[0], 1L, Long::sum);
          }

          @Override
          public void number(String t, long largest) {}
        });
    out.remove("import_columns");
    out.remove("erasure"); // an athlete who went leaves their random name
    return out;
  }

  private static final String ROSTER =
      """
      Athlete;DOB;Gender;Level;Takeoff leg;Run-up steps;Squad
      Ada Fenn;3.11.2010;f;beginner;L;4;Tuesday
      Bo Larch;25.2.2009;m;;R;0;Tuesday
      Cy Moor;;;advanced;;8 steps;
      """;

  @Test
  void aRosterIsShownTakenWholeAndTakenBackWhole() {
    Map<String, Long> before = counts();
    assertThat(moveIn.kind(sheet(ROSTER))).isEqualTo(Kind.ROSTER);
    assertThat(told(ROSTER, null))
        .containsExactly(
            "2 new: Ada Fenn, born 2010-11-03, female, beginner, takes off left, from 4 steps, in Tuesday",
            "3 new: Bo Larch, born 2009-02-25, male, level not set, takes off right, from standing, in Tuesday",
            "4 new: Cy Moor, advanced, takes off right (not in the file), from 8 steps");
    assertThat(counts()).isEqualTo(before);
    MoveIn.Result result = take(ROSTER, null, ALL);
    assertThat(result.taken()).isEqualTo(3);
    Athlete ada = w.athletes().byName("ada fenn").orElseThrow();
    assertThat(ada).isEqualTo(new Athlete(ada.id(), "Ada Fenn", Level.BEGINNER, Foot.LEFT, 4));
    assertThat(w.people().person(ada.id())).isEqualTo(new Person(LocalDate.of(2010, 11, 3), Sex.FEMALE));
    assertThat(w.attendance().groups()).hasSize(1).first().satisfies(g -> assertThat(g.members()).hasSize(2));
    assertThat(moveIn.past(5)).hasSize(1).first().satisfies(p -> assertThat(p.here()).isEqualTo("3 athletes, 2 places in groups"));
    assertThat(told(ROSTER, null)).allSatisfy(t -> assertThat(t).contains("here already"));
    assertThat(take(ROSTER, null, ALL).taken()).as("nothing is doubled").isZero();
    assertThat(moveIn.takeBack(result.number())).isEqualTo("3 athletes");
    assertThat(counts()).isEqualTo(before);
    assertThatThrownBy(() -> moveIn.takeBack(result.number())).isInstanceOf(RefusedException.class).hasMessageContaining("nothing is here");
  }

  @Test
  void ofSomebodyWhoIsHereOnlyWhatIsEmptyIsFilledAndIsEmptyAgainWhenTakenBack() {
    Athlete ada = w.athletes().add(new Athlete(0, "Ada Fenn", Level.NOT_SET, Foot.RIGHT, 2));
    Athlete bo = w.athletes().add(new Athlete(0, "BO LARCH", Level.ADVANCED, Foot.RIGHT, 0));
    w.people().keep(bo.id(), new Person(LocalDate.of(2008, 1, 1), null));
    Map<String, Long> before = counts();
    assertThat(told(ROSTER, null).subList(0, 2))
        .containsExactly(
            "2 adding: Ada Fenn: born 2010-11-03, female, beginner, in Tuesday; stays takes off right, not left; from 2 steps, not from 4 steps",
            "3 adding: BO LARCH: male, in Tuesday; stays born 2008-01-01, not 2009-02-25");
    long number = take(ROSTER, null, ALL).number();
    assertThat(w.athletes().byId(ada.id()).orElseThrow()).isEqualTo(new Athlete(ada.id(), "Ada Fenn", Level.BEGINNER, Foot.RIGHT, 2));
    assertThat(w.people().person(bo.id())).isEqualTo(new Person(LocalDate.of(2008, 1, 1), Sex.MALE));
    w.people().say(w.athletes().byName("Cy Moor").orElseThrow().id(), Scope.FILM, true);
    assertThat(moveIn.takeBack(number)).isEqualTo("0 athletes and 4 entries; 1 of whom more is kept by now stays");
    assertThat(w.athletes().byId(ada.id())).contains(ada);
    assertThat(w.people().person(ada.id())).isEqualTo(Person.UNKNOWN);
    assertThat(w.people().person(bo.id())).isEqualTo(new Person(LocalDate.of(2008, 1, 1), null));
    w.athletes().erase(w.athletes().byName("Cy Moor").orElseThrow().id());
    assertThat(counts()).isEqualTo(before);
  }

  @Test
  void refusedRowsAreNamedWithLineAndReasonAndNothingIsTakenUnlessThatIsSaid() {
    String text =
        """
        Name,Born,Level,Leg,Steps
        Ada,2010-02-30,beginner,L,4
        Bo,2010-02-03,expert,L,4
        C\u0007y,2010-02-03,beginner,L,4
        Di,2010-02-03,beginner,both,4
        Ed,2010-02-03,beginner,R,400
        ,2010-02-03,beginner,R,4
        Fi,2010-02-03,beginner,R,4
        fi,2010-02-03,beginner,R,4
        Gu,2030-02-03,beginner,R,4
        Hy,10,beginner,R,4
        """;
    List<String> told = told(text, null);
    assertThat(told.stream().filter(t -> t.contains(" refused: "))).hasSize(9);
    assertThat(told.get(0)).startsWith("2 refused").contains("no day of the calendar");
    assertThat(told.get(1)).startsWith("3 refused").contains("'expert' is not known");
    assertThat(told.get(2)).startsWith("4 refused").contains("U+0007");
    assertThat(told.get(3)).contains("'both'");
    assertThat(told.get(4)).contains("400");
    assertThat(told.get(5)).startsWith("7 refused").contains("The name is empty");
    assertThat(told.get(7)).startsWith("9 refused").contains("in the file twice");
    assertThat(told.get(8)).contains("lies after today");
    assertThat(told.get(9)).contains("is not a day");
    assertThat(take(text, null, ALL).taken()).isZero();
    assertThat(w.athletes().all()).isEmpty();
    assertThat(take(text, null, GOOD).taken()).isEqualTo(1);
    assertThat(w.athletes().all()).hasSize(1);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(delimiter = '|', nullValues = "-", value = {
      // a day above 12 anywhere in the file says which number is the month
      "3.11.2010 25.2.2009   | -           | 2010-11-03",
      "11/3/2010 2/25/2009   | -           | 2010-11-03",
      // nothing says it: asked
      "3.11.2010 4.12.2009   | ask         | -",
      "3.11.2010 4.12.2009   | DAY_FIRST   | 2010-11-03",
      "3.11.2010 4.12.2009   | MONTH_FIRST | 2010-03-11",
      // the file contradicts itself: asked
      "3/11/2010 25/2/2009 2/25/2009 | ask | -",
      // both numbers the same: no question
      "3.3.2010 12.12.2009   | -           | 2010-03-03",
      "2010-11-03 2009-01-02 | -           | 2010-11-03",
      "2010/11/03 2009/1/2   | -           | 2010-11-03",
      "2010-11-03T00:00:00   | -           | 2010-11-03",
  })
  void daysThatCanBeReadInTwoWaysAreAskedOnceForTheFile(String days, @Nullable String order, @Nullable String first) {
    StringBuilder text = new StringBuilder("name;born\n");
    int i = 0;
    for (String day : days.strip().split(" ")) {
      text.append("A").append(i++).append(';').append(day).append('\n');
    }
    Sheet sheet = sheet(text.toString());
    Columns columns = columns(sheet, order == null || order.equals("ask") ? null : DayOrder.valueOf(order));
    Look look = moveIn.look(sheet, columns);
    assertThat(look.ask()).isEqualTo("ask".equals(order));
    if (look.ask()) {
      assertThatThrownBy(() -> moveIn.take(sheet, columns, GOOD)).isInstanceOf(RefusedException.class).hasMessageContaining("in two ways");
      assertThat(w.athletes().all()).isEmpty();
    } else {
      moveIn.take(sheet, columns, GOOD);
      assertThat(w.people().person(w.athletes().byName("A0").orElseThrow().id()).born()).isEqualTo(first);
    }
  }

  private static final String RESULTS =
      """
      Competition\tDate\tName\tEvent\tMark\tWind
      Harbour Games\t2026-04-11\tAda Fenn\tTriple jump\t11,42\t+1,2
      Harbour Games\t2026-04-11\tAda Fenn\tTriple jump\tx\t
      Harbour Games\t2026-04-11\tAda Fenn\tTriple jump\t11,42\t0,3
      Harbour Games\t2026-04-11\tBo Larch\tHigh jump\t1,60\t
      Harbour Games\t2026-04-11\tBo Larch\tTriple jump\t40' 6 1/4"\t
      Hill Meet\t2026-05-02\tBo Larch\tTriple jump\t-\t
      Hill Meet\t2026-05-20\tBo Larch\tTriple jump\t11.80\t
      Hill Meet\t2026-05-02\tBo Lark\tTriple jump\t11.80\t
      """;

  @Test
  void pastResultsGoWhereAttemptsAreKeptAndComeOutAgainWhole() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada Fenn"));
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo Larch"));
    Map<String, Long> before = counts();
    assertThat(moveIn.kind(sheet(RESULTS))).isEqualTo(Kind.RESULTS);
    List<String> told = told(RESULTS, null);
    assertThat(told.get(0)).isEqualTo("2 new: Ada Fenn: 11.42 m, wind +1.2 m/s, Harbour Games, 2026-04-11, round 1");
    assertThat(told.get(1)).isEqualTo("3 new: Ada Fenn: a foul, Harbour Games, 2026-04-11, round 2");
    assertThat(told.get(3)).startsWith("5 refused").contains("neither the triple jump nor the long jump");
    assertThat(told.get(6)).startsWith("8 refused").contains("lies after today");
    assertThat(told.get(7)).startsWith("9 refused").contains("Did you mean Bo Larch");
    long number = take(RESULTS, null, GOOD).number();
    assertThat(w.meets().all()).hasSize(2);
    List<Attempt> of = w.meets().attemptsOf(ada.id()).stream().map(AthleteAttempt::kept).map(k -> k.attempt()).toList();
    assertThat(of).extracting(Attempt::round).containsExactly(1, 2, 3);
    assertThat(of.get(0).distance_m()).isEqualTo(11.42);
    assertThat(of.get(0).wind()).isEqualTo(1.2);
    // 40 ft 6 1/4 in by the exact foot and inch (international yard and pound agreement 1959; published): 12.350750 m
    assertThat(w.meets().attemptsOf(bo.id()).get(0).distance_m()).isCloseTo(40 * 0.3048 + 6.25 * 0.0254, org.assertj.core.data.Offset.offset(1e-9));
    assertThat(w.boardLog().inMeets(ada.id())).as("what the page of the aim looks at").hasSize(3);
    assertThat(take(RESULTS, null, GOOD).taken()).as("nothing is doubled").isZero();
    assertThat(moveIn.past(5).get(0).here()).isEqualTo("5 attempts");
    assertThat(moveIn.takeBack(number)).isEqualTo("5 attempts");
    assertThat(counts()).isEqualTo(before);
  }

  /** One day's meet in both events is two meets here, and each event's marks go into its own. */
  @Test
  void longJumpsGoIntoAMeetOfTheirOwn() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada Fenn"));
    String both = "meet,date,name,event,distance\nHill Meet,2026-05-02,Ada Fenn,LJ,5.12\nHill Meet,2026-05-02,Ada Fenn,TJ,11.20\nHill Meet,2026-05-02,Ada Fenn,LJ,11.20\n";
    List<String> told = told(both, null);
    assertThat(told.get(0)).contains("5.12 m, long jump");
    assertThat(told.get(2)).contains("refused").contains("1 to 10 m");
    long number = take(both, null, GOOD).number();
    assertThat(w.meets().all()).extracting(m -> m.event().label()).containsExactlyInAnyOrder("triple jump", "long jump");
    assertThat(w.boardLog().inMeets(ada.id(), Event.LONG_JUMP)).singleElement().satisfies(s -> assertThat(s.distance_m()).isEqualTo(5.12));
    assertThat(w.boardLog().inMeets(ada.id())).hasSize(1);
    assertThat(take(both, null, GOOD).taken()).as("nothing is doubled").isZero();
    moveIn.takeBack(number);
    assertThat(w.meets().all()).isEmpty();
  }

  @Test
  void resultsJoinAMeetThatIsHereAndTakenBackLeaveItAsItWas() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada Fenn"));
    w.athletes().add(Fixtures.athlete("Bo Larch"));
    take("meet,date,name,distance,round\nHill Meet,2026-05-02,Ada Fenn,11.00,2\n", null, ALL);
    Map<String, Long> before = counts();
    String more = "meet,date,name,distance,round\nhill meet,2026-05-02,Ada Fenn,11.30,1\nHill Meet,2026-05-02,Bo Larch,10.90,1\n";
    long number = take(more, null, ALL).number();
    assertThat(w.meets().all()).hasSize(1);
    assertThat(w.meets().attemptsOf(ada.id())).hasSize(2);
    assertThat(told("meet,date,name,distance,round\nHill Meet,2026-05-02,Ada Fenn,12.30,1\n", null).get(0)).contains("refused", "Round 1 of Ada Fenn in Hill Meet holds 11.30 m already");
    moveIn.takeBack(number);
    assertThat(counts()).isEqualTo(before);
  }

  @Test
  void repsInColumnsOfTheCoachsOwnAreReadAsThoseOfTheFormatAre() {
    String own =
        """
        Day;Who;Drill;Approach;Ground;Prints;Landed;Tap
        3.5.2026;Ada Fenn;RRL;4;track;2,31;7,94;in
        4.5.2026;Ada Fenn;RXL;4;track;;8,20;in
        13.5.2026;Ada Fenn;RRL;4;track;;8,20;in
        14.4.2026;Ada Fenn;RRL;4;track;;26 ft;in
        """;
    Sheet sheet = sheet(own);
    Columns columns =
        Columns.read(
            Kind.REPS, "date=Day,athlete=who,sequence=3,approach_steps=Approach,surface=Ground,footprints_m=Prints,landing_m=Landed,outcome=Tap", sheet.header(), LengthUnit.METRES);
    Look look = moveIn.look(sheet, columns);
    assertThat(look.rows()).extracting(RowLook::line).containsExactly(2, 3, 4, 5);
    assertThat(look.rows()).extracting(RowLook::state).containsExactly(RowLook.State.NEW, RowLook.State.BAD, RowLook.State.LATER, RowLook.State.NEW);
    MoveIn.Result result = moveIn.take(sheet, columns, GOOD);
    assertThat(result.taken()).isEqualTo(2);
    long ada = w.athletes().byName("Ada Fenn").orElseThrow().id();
    assertThat(w.reps().inOrder(ada)).extracting(r -> r.landing_m()).containsExactly(7.9248, 7.94);
    assertThat(w.reps().inOrder(ada).get(1).footprints_m()).containsExactly(2.31);
    assertThat(moveIn.knows(Kind.REPS, sheet)).isTrue();
    assertThat(moveIn.columns(moveIn.kind(sheet), sheet).places()).isEqualTo(columns.places());
    assertThat(moveIn.takeBack(result.number())).isEqualTo("2 reps and 1 athlete whom the file had made");
    assertThat(w.athletes().all()).isEmpty();
  }

  @Test
  void aColumnIsOneThingAndWhatIsNeededMustHaveOne() {
    Sheet sheet = sheet("a;b;c\n1;2;3\n");
    assertThatThrownBy(() -> moveIn.look(sheet, columns(sheet, null))).isInstanceOf(RefusedException.class).hasMessageContaining("No column is chosen for Name");
    assertThatThrownBy(() -> Columns.read(Kind.ROSTER, "name=a,born=1", sheet.header(), LengthUnit.METRES)).isInstanceOf(RefusedException.class).hasMessageContaining("chosen twice");
    assertThatThrownBy(() -> Columns.read(Kind.ROSTER, "name=d", sheet.header(), LengthUnit.METRES)).hasMessageContaining("no column 'd'");
    assertThatThrownBy(() -> Columns.read(Kind.ROSTER, "landing_m=a", sheet.header(), LengthUnit.METRES)).hasMessageContaining("names no field of roster");
    Columns c = Columns.read(Kind.RESULTS, "athlete=a,date=b,distance=c,days=month-first,unit=ft", sheet.header(), LengthUnit.METRES);
    assertThat(Columns.read(Kind.RESULTS, c.text(), sheet.header(), LengthUnit.METRES)).isEqualTo(c);
    assertThat(Set.of(Kind.values())).allSatisfy(k -> assertThat(k.fields()).isNotEmpty());
  }
}
