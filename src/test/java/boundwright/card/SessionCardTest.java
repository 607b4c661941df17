package boundwright.card;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.card.SessionCard.AthletePage;
import boundwright.card.SessionCard.DrillBlock;
import boundwright.card.SessionCard.Figure;
import boundwright.card.SessionCard.SetLine;
import boundwright.card.SessionCard.SquadPage;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.technique.TeachingPoint;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class SessionCardTest {
  private static AthletePage page(Drill... drills) {
    SessionCard card = Fixtures.cards().of(Fixtures.athletes(1), new DayPlan("", List.of(drills)), CoachSettings.DEFAULT);
    return Objects.requireNonNull(card.athlete());
  }

  private static Drill drill(String letters, int sets, int reps) {
    return new Drill(Sequence.parse(letters), 4, sets, reps, true);
  }

  /** Science section 1 (worked): R R L in a set of 9 gives 6 and 3, so the next set starts on the other foot. */
  @Test
  void theSecondSetOfRrlIsMirrored() {
    AthletePage page = page(drill("RRL x3", 2, 3));
    assertThat(page.drills().get(0).sets())
        .containsExactly(new SetLine(1, "RRL x3", false, 3), new SetLine(2, "LLR x3", true, 3));
    assertThat(page.right()).isEqualTo(27);
    assertThat(page.left()).isEqualTo(27);
    assertThat(page.total()).isEqualTo(54);
    assertThat(page.balance()).isEqualTo("Legs level: 27 right, 27 left.");
  }

  /** Worked: 4 reps of RRR are 12 contacts, as are two sets of 2; turning the one set is fewer than turning the two. */
  @Test
  void theLegsAreLevelledByRepsNotBySets() {
    AthletePage page = page(drill("RRR", 1, 4), drill("RRR", 2, 2));
    assertThat(page.right()).isEqualTo(12);
    assertThat(page.left()).isEqualTo(12);
    assertThat(page.drills().get(0).sets()).allMatch(SetLine::mirrored);
    assertThat(page.drills().get(1).sets()).noneMatch(SetLine::mirrored);
  }

  @Test
  void whatCannotBeLevelledIsSaid() {
    assertThat(page(drill("RRL", 1, 3)).balance())
        .isEqualTo("6 right, 3 left: 3 contacts more on the right, as level as whole sets allow.");
  }

  @Test
  void aLongSequenceIsCutIntoSetsAndEachPieceHasItsMarks() {
    DrillBlock block = page(drill("RRLL x3", 2, 2)).drills().get(0);
    assertThat(block.cut()).isEqualTo("12 contacts, cut into sets of at most 10: RRLLRRLLRR, then LL.");
    assertThat(block.sets()).hasSize(4);
    assertThat(block.dose()).isEqualTo("4 sets of 2");
    assertThat(block.right() + block.left()).isEqualTo(2 * 2 * 12);
    assertThat(block.variants()).hasSizeGreaterThanOrEqualTo(2);
    assertThat(block.variants().get(0).figures().get(0)).isNotEqualTo(block.variants().get(1).figures().get(0));
  }

  @Test
  void everyDrillShowsItsFiguresAndOneOfItsVariantsIsDrawn() {
    SessionCard card = Fixtures.cards().of(Fixtures.athletes(1), Fixtures.PLAN, CoachSettings.DEFAULT);
    for (DrillBlock block : Objects.requireNonNull(card.athlete()).drills()) {
      assertThat(block.variants().get(0).strip()).as("drill %d", block.number()).isNotNull();
      assertThat(block.variants().get(0).figures().get(0).caption()).isEqualTo(block.flat() ? "Level ground" : "Take-off mark");
    }
    assertThat(card.lookFor()).containsExactly(Arrays.stream(TeachingPoint.values()).map(TeachingPoint::lookFor).toArray(String[]::new));
    assertThat(String.join(" ", card.cautions())).contains("never concrete", "Stop at any pain", "Local rules", "licensed medical staff");
  }

  @Test
  void aClosedWindowIsSaidWithItsWarningsAndTheWaysOut() {
    SessionCard card =
        Fixtures.cards()
            .of(List.of(Fixtures.athlete(3)), new DayPlan("", List.of(drill("RRL x2", 1, 1))), CoachSettings.DEFAULT);
    DrillBlock block = Objects.requireNonNull(card.athlete()).drills().get(0);
    assertThat(block.variants().get(0).figures()).contains(new Figure("Works from", "nowhere", "no mark is good enough", false));
    assertThat(block.minds()).anyMatch(m -> m.startsWith("No mark reaches")).anyMatch(m -> m.contains("The first 4 contacts"));
  }

  @Test
  void theSquadsTableHasARowForEachAndTheTapesNameWhomTheyServe() {
    SessionCard card = Fixtures.cards().of(Fixtures.athletes(5), Fixtures.PLAN, CoachSettings.DEFAULT, "Invented.");
    SquadPage page = Objects.requireNonNull(card.squad());
    assertThat(card.athlete()).isNull();
    assertThat(card.footnote()).isEqualTo("Invented.");
    assertThat(page.rows()).hasSize(5).allMatch(r -> r.cells().size() == page.drills().size());
    // RRLL x3 is cut at ten contacts, so five drills make six columns
    assertThat(page.drills()).hasSize(6);
    assertThat(page.tapes()).hasSize(5);
    assertThat(page.tapes().get(0).serves()).isEqualTo("(1) everybody");
    assertThat(page.rows().get(3).cells().get(1).note()).as("the closed one says in words that its mark is unsure").endsWith("unsure");
    assertThat(page.rows().get(0).cells().get(1).note()).doesNotContain("unsure");
    assertThat(page.rows().get(0).cells()).extracting(SessionCard.SquadCell::reps).as("a box for every rep").containsExactly(4, 6, 2, 2, 2, 6);
  }

  @Test
  void anEmptyPlanAndAnEmptySquadAreRefusedInWords() {
    assertThatThrownBy(() -> Fixtures.cards().of(List.of(), Fixtures.PLAN, CoachSettings.DEFAULT))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("0");
    assertThatThrownBy(() -> Fixtures.cards().of(Fixtures.athletes(1), new DayPlan("", List.of()), CoachSettings.DEFAULT))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Add a sequence");
  }
}
