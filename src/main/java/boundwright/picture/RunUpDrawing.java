package boundwright.picture;

import static boundwright.picture.StripPaths.number;
import static boundwright.picture.StripPaths.round;
import static boundwright.picture.StripPaths.textWidth;

import boundwright.approach.run.RunUpPlan;
import boundwright.approach.run.RunwaySpread;
import boundwright.approach.run.StepModel;
import boundwright.footfall.Foot;
import boundwright.picture.RunUpPicture.Mark;
import boundwright.picture.RunUpPicture.Spread;
import boundwright.picture.SharesPicture.Text;
import boundwright.picture.strip.RunwayStrip.Print;
import boundwright.picture.strip.RunwayStrip.Tick;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Lays out one run-up; metres count from the take-off line back. */
final class RunUpDrawing {
  private static final double PAD = 14;
  private static final double RUNWAY = 44;
  private static final double FIELD = 72;
  private static final double CAPTION = 12;

  private final RunUpPlan plan;
  private final StepModel steps;
  private final @Nullable RunwaySpread spread;
  private final boolean takeOffRight;
  private final LengthUnit unit;
  private final Width form;
  private final double figure;
  private final double smaller;
  private final double top;
  private final double bottom;
  private final double boardX;
  private final double scale;

  RunUpDrawing(RunUpPlan plan, StepModel steps, @Nullable RunwaySpread spread, Foot takeOff, LengthUnit unit, Width form) {
    this.plan = plan;
    this.steps = steps;
    this.spread = spread != null && spread.steps() == plan.steps() ? spread : null;
    this.takeOffRight = takeOff == Foot.RIGHT;
    this.unit = unit;
    this.form = form;
    boolean wide = form == Width.WIDE;
    figure = wide ? 26 : 22;
    smaller = wide ? 16 : 14;
    top = figure + smaller + 38;
    bottom = top + RUNWAY;
    boardX = form.units() - PAD - 8;
    scale = (boardX - PAD - 4) / Math.max(plan.startMark_m().p50(), 1);
  }

  RunUpPicture draw() {
    List<Text> texts = new ArrayList<>();
    List<Mark> marks = marks(texts);
    List<Tick> ticks = ticks(texts);
    List<Print> prints = prints();
    List<Spread> spreads = new ArrayList<>();
    StringBuilder grid = new StringBuilder();
    String steering = "";
    double height = bottom + 26;
    if (spread != null) {
      double fieldTop = bottom + 52;
      double floor = fieldTop + FIELD;
      spreads(spread, fieldTop, floor, spreads, grid, texts);
      steering = steering(spread, floor, texts);
      height = floor + (steering.isEmpty() ? 8 : 30);
    }
    return new RunUpPicture(
        form.units(), height, form, title(), said(), top, bottom, round(boardX), marks, prints, ticks, grid.toString(), spreads, steering, texts);
  }

  private double x(double toBoard_m) {
    return boardX - toBoard_m * scale;
  }

  private double stepAt_m(int step) {
    return steps.between(step, plan.steps(), plan.steps()).p50() + plan.aim_m();
  }

  // ---- marks ----

  private List<Mark> marks(List<Text> texts) {
    List<Mark> out = new ArrayList<>();
    double high = figure + 12;
    double lower = high + smaller + 19;
    double start = x(plan.startMark_m().p50());
    texts.add(text(start, 10, CAPTION, "start", false, "START MARK"));
    texts.add(text(start, high - 4.5, figure, "start", true, unit.write(plan.startMark_m().p50())));
    out.add(mark(start, high, start + textWidth(unit.write(plan.startMark_m().p50()), figure)));
    double early = x(plan.earlyMark_m().p50());
    double earlyEnd = 0;
    if (plan.earlyStep() < plan.steps() - plan.checkSteps()) {
      String caption = "OWN, STEP " + plan.earlyStep();
      String said = unit.write(plan.earlyMark_m().p50());
      flag(out, texts, early, lower, caption, said, "start");
      earlyEnd = early + Math.max(textWidth(caption, CAPTION), textWidth(said, smaller));
    }
    if (plan.checkSteps() > 0 && plan.checkSteps() < plan.steps()) {
      double check = x(plan.checkMark_m().p50());
      String said = unit.write(plan.checkMark_m().p50());
      String caption = "COACH, " + plan.checkSteps() + " OUT";
      double width = Math.max(textWidth(caption, CAPTION), textWidth(said, smaller));
      boolean back = check + width + 6 > boardX - 30;
      // beside the athlete's own mark where there is room, else above it: nothing stands there but the start's figure
      boolean above = (back ? check - width : check) < earlyEnd + 6;
      flag(out, texts, check, above ? high : lower, caption, said, above ? check + width > form.units() - 2 ? "end" : "start" : back ? "end" : "start");
    }
    texts.add(text(form.units() - 2, top - 6, 12, "end", false, "BOARD"));
    return out;
  }

  private void flag(List<Mark> out, List<Text> texts, double x, double base, String caption, String said, String anchor) {
    double width = textWidth(said, smaller);
    texts.add(text(x, base - smaller - 4.5, CAPTION, anchor, false, caption));
    texts.add(text(x, base - 4, smaller, anchor, true, said));
    out.add(mark(x, base, anchor.equals("start") ? x + width : x - width));
  }

  private Mark mark(double x, double base, double to) {
    return new Mark(round(x), "M" + number(x) + " " + number(top - 2) + "V" + number(base) + "H" + number(to));
  }

  // ---- runway ----

  private List<Print> prints() {
    List<Print> out = new ArrayList<>();
    double closest = Double.MAX_VALUE;
    for (int i = 1; i < plan.steps(); i++) {
      closest = Math.min(closest, scale * (stepAt_m(i) - stepAt_m(i + 1)));
    }
    double length = Math.max(8, Math.min(form == Width.WIDE ? 22 : 15, 1.1 * closest));
    for (int i = 1; i <= plan.steps(); i++) {
      boolean right = (plan.steps() - i) % 2 == 0 == takeOffRight;
      double at = x(stepAt_m(i)) - length / 2;
      double y = top + RUNWAY * (right ? 0.71 : 0.29);
      out.add(new Print(i, round(at), round(y), length, right, Sole.path(at, y, length, right)));
    }
    return out;
  }

  private List<Tick> ticks(List<Text> texts) {
    List<Tick> out = new ArrayList<>();
    double each = unit == LengthUnit.METRES ? 5 : 10 * LengthUnit.FOOT_M;
    int by = unit == LengthUnit.METRES ? 5 : 10;
    boolean sparse = scale * each < 34;
    for (int k = 0; k * each <= plan.startMark_m().p50() + 0.01; k++) {
      double at = x(k * each);
      boolean labelled = !sparse || k % 2 == 0;
      out.add(new Tick(round(at), bottom, labelled ? 6 : 3.5));
      if (labelled) {
        texts.add(text(at, bottom + 18, 12, "middle", false, k * by + (k == 0 ? "" : unit == LengthUnit.METRES ? " m" : " ft")));
      }
    }
    return out;
  }

  // ---- spread ----

  private void spreads(RunwaySpread s, double fieldTop, double floor, List<Spread> out, StringBuilder grid, List<Text> texts) {
    double most = 0.05;
    for (RunwaySpread.StepSpread each : s.each()) {
      most = Math.max(most, Math.min(each.sd_m().p95(), 2 * each.sd_m().p50()));
    }
    double tick = unit == LengthUnit.METRES ? (most > 0.35 ? 0.20 : most > 0.16 ? 0.10 : 0.05) : (most > 0.30 ? 6 : 3) * LengthUnit.INCH_M;
    for (int k = 0; k * tick <= most; k++) {
      double y = floor - FIELD * k * tick / most;
      grid.append("M").append(number(PAD)).append(' ').append(number(y)).append("H").append(number(boardX + 8));
    }
    texts.add(text(PAD, fieldTop - 8, 12, "start", true, "how widely each step falls (SD; a line every " + unit.writeSmall(tick) + ")"));
    for (RunwaySpread.StepSpread each : s.each()) {
      double x = x(stepAt_m(plan.steps() - each.stepsOut()));
      Estimate sd = each.sd_m();
      out.add(new Spread(round(x), floor, high(sd.p50(), most, floor), high(sd.p05(), most, floor), high(sd.p95(), most, floor)));
    }
  }

  private static double high(double sd, double most, double floor) {
    return round(floor - FIELD * Math.min(sd / most, 1.06));
  }

  private String steering(RunwaySpread s, double floor, List<Text> texts) {
    if (s.steers() < 0.9) {
      return "";
    }
    int out = (int) s.onset().p50();
    double from = x(stepAt_m(plan.steps() - out));
    boolean left = boardX - from > 130;
    texts.add(text(left ? (from + boardX) / 2 : boardX, floor + 24, 12, left ? "middle" : "end", true, "steers over the last " + out + (out == 1 ? " step" : " steps")));
    return StripPaths.bracket(from, boardX, floor + 3, floor + 10);
  }

  private static Text text(double x, double y, double size, String anchor, boolean strong, String said) {
    return new Text(round(x), round(y), size, anchor, 0, strong, said);
  }

  // ---- words ----

  private String title() {
    return "Run-up of " + plan.steps() + (plan.steps() == 1 ? " step" : " steps") + ": start mark " + unit.write(plan.startMark_m().p50()) + " from the board";
  }

  private String said() {
    StringBuilder out = new StringBuilder("The runway from above, start at the left, board at the right. ");
    out.append("The coach's check mark, ").append(plan.checkSteps()).append(" steps out, lies ").append(unit.write(plan.checkMark_m().p50()))
        .append(" from the board; the athlete's own, step ").append(plan.earlyStep()).append(", ").append(unit.write(plan.earlyMark_m().p50())).append(". ");
    if (spread != null) {
      RunwaySpread.StepSpread widest = spread.each().stream().filter(e -> e.stepsOut() == spread.widest()).findFirst().orElseThrow();
      out.append(String.format(Locale.ROOT, "The foot falls most widely %d steps out, by %s. ", widest.stepsOut(), unit.writeSmall(widest.sd_m().p50())));
      out.append(spread.words()).append(' ');
    }
    return out.append("Right feet filled, left feet outlined; the last is the ").append(takeOffRight ? "right." : "left.").toString();
  }
}
