package boundwright.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.aim.AimAdvice;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.approach.board.BoardGaps;
import boundwright.approach.board.BoardSpread;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunUpPlan;
import boundwright.approach.run.RunwaySpread;
import boundwright.approach.run.SpeedBySteps;
import boundwright.approach.run.StepModel;
import boundwright.footfall.Foot;
import boundwright.jump.BestShares;
import boundwright.jump.MeasuredJump;
import boundwright.jump.PhaseClass;
import boundwright.jump.ReferenceJump;
import boundwright.jump.Shares;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.LengthUnit;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The pictures are held against plain geometry: a triangle's barycentric coordinates, and distances in proportion. */
class MeetPicturesTest {
  private static final List<MeasuredJump> JUMPS = MeetGallery.jumps(0.6, 2.3, 8, 5);
  private static final BestShares BEST = MeetGallery.best(JUMPS);
  private static final SharesPicture SHARES = SharesPicture.of(MeetGallery.shown(JUMPS), BEST, ReferenceJump.ALL, 2);

  @Test
  void aLargerHopLiesFurtherLeftAndALargerStepHigher() {
    // in a triangle of shares x follows (jump - hop) / 2 and y the step, both by one scale (barycentric coordinates)
    List<SharesPicture.Mark> refs = marks(SharesPicture.Kind.REFERENCE);
    assertThat(refs).hasSize(ReferenceJump.ALL.size());
    double sx = 0;
    for (int i = 1; i < refs.size(); i++) {
      Shares a = ReferenceJump.ALL.get(0).shares();
      Shares b = ReferenceJump.ALL.get(i).shares();
      double dx = (b.jump() - b.hop() - a.jump() + a.hop()) / 2;
      double dy = (b.step() - a.step()) * Math.sqrt(3) / 2;
      double scale = Math.hypot(refs.get(i).x() - refs.get(0).x(), refs.get(i).y() - refs.get(0).y()) / Math.hypot(dx, dy);
      assertThat(refs.get(i).x() - refs.get(0).x()).isCloseTo(scale * dx, within(0.02));
      assertThat(refs.get(0).y() - refs.get(i).y()).isCloseTo(scale * dy, within(0.02));
      assertThat(sx == 0 ? scale : sx).isCloseTo(scale, within(scale / 1000));
      sx = scale;
    }
  }

  @Test
  void everyMarkLiesInsideTheTriangleAndEveryReferenceSaysItsStanding() {
    for (SharesPicture.Mark m : SHARES.marks()) {
      double up = (272 - m.y()) / (284 * Math.sqrt(3) / 2);
      assertThat(up).isBetween(0.0, 1.0);
      assertThat(m.x()).isBetween(38 + 142 * up - 0.01, 322 - 142 * up + 0.01);
    }
    assertThat(SHARES.keys()).extracting(SharesPicture.KeyLine::said)
        .contains("Men's world final 1995, 18.29 m (from memory)", "Women's world final 2019, 15.37 m (second-hand)");
    assertThat(SHARES.said()).contains("(read in the source)");
  }

  @Test
  void theBestSaysWhetherItSitsOnABoundAndThePlateauIsDrawn() {
    boolean bound = BEST.onEdge();
    assertThat(marks(SharesPicture.Kind.BEST_ON_BOUND)).hasSize(bound ? 1 : 0);
    assertThat(marks(SharesPicture.Kind.BEST)).hasSize(bound ? 0 : 1);
    assertThat(SHARES.plateau()).startsWith("M").endsWith("Z");
    assertThat(SHARES.reachable()).startsWith("M").endsWith("Z");
    assertThat(marks(SharesPicture.Kind.NEWEST)).hasSize(1);
  }

  @Test
  void withoutMeasuredSpeedsTheTriangleStillStandsAndClaimsNoBest() {
    SharesPicture bare = SharesPicture.of(List.of(), null, ReferenceJump.ALL, 2);
    assertThat(bare.plateau()).isEmpty();
    assertThat(bare.marks()).allMatch(m -> m.kind() == SharesPicture.Kind.REFERENCE);
    assertThat(bare.classes()).extracting(SharesPicture.Area::of).containsExactly(PhaseClass.BALANCED, PhaseClass.HOP_DOMINATED, PhaseClass.JUMP_DOMINATED);
  }

  @Test
  void theAimCurveTopsAtTheAdvisedAimAndTheToeStandsThere() {
    // science 7, worked: se .10, sj .20, T = mu -> m .092, fouls 17.8 %
    JumpForm form = new JumpForm(14, 0.20, 0.10);
    BoardSpread board = BoardSpread.of(BoardGaps.of(List.of(0.02, 0.15, 0.04, 0.11, 0.01, 0.2, 0.03), 5));
    Goal goal = Goal.Target.metres(14.00);
    AimAdvice advice = AimAdvice.of(board, form, goal, 6);
    AimPicture p = AimPicture.of(form, goal, 6, advice, Foot.LEFT, LengthUnit.METRES);
    AimPicture.Rail aim = p.rails().stream().filter(AimPicture.Rail::advised).findFirst().orElseThrow();
    AimPicture.Rail now = p.rails().stream().filter(r -> !r.advised()).findFirst().orElseThrow();
    double perMetre = (p.lineX() - aim.x()) / advice.best().aim_m();
    assertThat(advice.best().aim_m()).isCloseTo(0.092, within(0.001));
    assertThat((p.lineX() - now.x()) / advice.now().aim_m()).isCloseTo(perMetre, within(perMetre / 50));
    assertThat(p.foulFloor() - aim.foulY()).isCloseTo(0.178 * (p.foulFloor() - p.foulTop()), within(0.1));
    double top = java.util.Arrays.stream(p.worth().substring(1).split("L")).mapToDouble(s -> Double.parseDouble(s.split(" ")[1])).min().orElse(0);
    assertThat(aim.worthY()).isLessThanOrEqualTo(top + 0.01);
    RunwayStrip.Print shoe = p.prints().get(1);
    assertThat(shoe.x() + shoe.length() / 2).isCloseTo(aim.x(), within(0.02));
    assertThat(p.prints()).noneMatch(RunwayStrip.Print::filled);
    assertThat(p.said()).contains("left (outlined)").contains("fouls 18 %");
  }

  @Test
  void theRunUpIsDrawnToScaleAndFeetAlternate() {
    List<RunThrough> runs = MeetGallery.runs(18, 9, 3);
    StepModel model = StepModel.of(runs);
    RunUpPlan plan = RunUpPlan.of(model, SpeedBySteps.of(List.of()), 18, 0.08, 5, 4);
    for (RunwayStrip.Width width : RunwayStrip.Width.values()) {
      RunUpPicture p = RunUpPicture.of(plan, model, RunwaySpread.of(runs), Foot.RIGHT, LengthUnit.METRES, width);
      double perMetre = (p.boardX() - p.marks().get(0).x()) / plan.startMark_m().p50();
      assertThat((p.boardX() - p.marks().get(1).x()) / plan.earlyMark_m().p50()).isCloseTo(perMetre, within(0.02));
      assertThat((p.boardX() - p.marks().get(2).x()) / plan.checkMark_m().p50()).isCloseTo(perMetre, within(0.02));
      assertThat(p.prints()).hasSize(18);
      for (int i = 0; i < 18; i++) {
        assertThat(p.prints().get(i).filled()).as("step " + (i + 1)).isEqualTo((17 - i) % 2 == 0);
      }
      assertThat(p.spreads()).hasSize(18);
      // the invented athlete steers over the last four steps: the board is met more closely than five steps out
      assertThat(p.spreads().get(17).y()).isGreaterThan(p.spreads().get(12).y());
      assertThat(p.steering()).isNotEmpty();
      assertThat(p.texts()).allMatch(t -> t.x() >= 0 && t.x() <= p.width());
    }
  }

  @Test
  void everyPictureHasATitleAndADescription() {
    TemplateEngine engine = TemplateEngine.createPrecompiled(null, ContentType.Html, MeetPicturesTest.class.getClassLoader(), "boundwright.pages");
    StringOutput out = new StringOutput();
    engine.render("picture/shares.jte", SHARES, out);
    assertThat(out.toString()).contains("<title>Shares of hop, step and jump").contains("<desc>A triangle").doesNotContain("NaN").doesNotContain("E-");
  }

  private static List<SharesPicture.Mark> marks(SharesPicture.Kind kind) {
    return SHARES.marks().stream().filter(m -> m.kind() == kind).toList();
  }
}
