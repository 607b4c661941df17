package boundwright.picture;

import static boundwright.picture.StripPaths.number;
import static boundwright.picture.StripPaths.round;

import boundwright.approach.aim.AimAdvice;
import boundwright.approach.aim.FixedAim;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.footfall.Foot;
import boundwright.picture.AimPicture.Rail;
import boundwright.picture.SharesPicture.Text;
import boundwright.picture.strip.RunwayStrip.Band;
import boundwright.picture.strip.RunwayStrip.Print;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Lays out one aim curve. */
final class AimDrawing {
  private static final double WIDTH = 360;
  private static final double LEFT = 44;
  private static final double RIGHT = 346;
  private static final double TOP = 46;
  private static final double FLOOR = 176;
  private static final double FOUL_TOP = 214;
  private static final double FOUL_FLOOR = 274;
  private static final double RUNWAY_TOP = 288;
  private static final double RUNWAY_BOTTOM = 334;
  private static final int POINTS = 72;
  /** Labels of two places nearer to each other than this would touch. */
  private static final double CLOSE = 84;
  /** Metres of worth shown below the top at most: near the line the curve falls off a cliff. */
  private static final double DEEPEST_M = 0.30;

  private final JumpForm form;
  private final Goal goal;
  private final int attempts;
  private final AimAdvice advice;
  private final boolean right;
  private final LengthUnit unit;
  private final double nearest;
  private final double furthest;
  private final List<FixedAim> curve = new ArrayList<>();
  private double low;
  private double high;

  AimDrawing(JumpForm form, Goal goal, int attempts, AimAdvice advice, Foot takeOff, LengthUnit unit) {
    this.form = form;
    this.goal = goal;
    this.attempts = attempts;
    this.advice = advice;
    this.right = takeOff == Foot.RIGHT;
    this.unit = unit;
    nearest = Math.max(-0.55, Math.min(0, advice.now().aim_m()) - 0.04);
    double far = Math.max(Math.max(advice.now().aim_m(), advice.furthest_m()), advice.best().aim_m()) + 0.08;
    furthest = Math.min(1.95, Math.max(far, Math.max(0.22, 2.6 * form.gapSd_m())));
  }

  AimPicture draw() {
    for (int i = 0; i <= POINTS; i++) {
      curve.add(FixedAim.at(form, goal, attempts, furthest + (nearest - furthest) * i / POINTS));
    }
    scale();
    List<Text> texts = new ArrayList<>();
    String grid = grid(texts);
    StringBuilder worth = new StringBuilder();
    StringBuilder fouls = new StringBuilder();
    for (FixedAim at : curve) {
      String go = worth.isEmpty() ? "M" : "L";
      worth.append(go).append(number(x(at.aim_m()))).append(' ').append(number(worthY(at.worth())));
      fouls.append(go).append(number(x(at.aim_m()))).append(' ').append(number(foulY(at.foulChance())));
    }
    String area = fouls + "V" + number(FOUL_FLOOR) + "H" + number(LEFT) + "Z";
    List<Rail> rails = List.of(rail(advice.now(), false), rail(advice.best(), true));
    flags(texts);
    return new AimPicture(
        WIDTH, RUNWAY_BOTTOM + 22, title(), said(), TOP, FLOOR, FOUL_TOP, FOUL_FLOOR, LEFT, RIGHT, RUNWAY_TOP, RUNWAY_BOTTOM, round(x(0)),
        grid, worth.toString(), fouls.toString(), area, range(), rails, bands(), prints(), texts);
  }

  // ---- scales ----

  private boolean inMetres() {
    return goal instanceof Goal.Longest;
  }

  private double x(double aim) {
    return LEFT + (RIGHT - LEFT) * (furthest - aim) / (furthest - nearest);
  }

  private double worthY(double worth) {
    return FLOOR - (FLOOR - TOP) * (worth - low) / (high - low);
  }

  private static double foulY(double chance) {
    return FOUL_FLOOR - (FOUL_FLOOR - FOUL_TOP) * chance;
  }

  private void scale() {
    double most = curve.stream().mapToDouble(FixedAim::worth).max().orElse(1);
    double least = curve.stream().mapToDouble(FixedAim::worth).min().orElse(0);
    most = Math.max(most, advice.best().worth());
    if (inMetres()) {
      least = Math.max(least, most - DEEPEST_M);
    }
    double spare = Math.max(0.08 * (most - least), inMetres() ? 0.01 : 0.005);
    high = most + spare;
    low = inMetres() ? least - spare : Math.max(0, least - spare);
  }

  private String grid(List<Text> texts) {
    StringBuilder out = new StringBuilder();
    double each = nice((high - low) / 4);
    for (double w = Math.ceil(low / each - 1e-9) * each + 0.0; w <= high; w += each) {
      double y = worthY(w);
      out.append("M").append(number(LEFT)).append(' ').append(number(y)).append("H").append(number(RIGHT));
      texts.add(text(LEFT - 5, y + 3.5, 12, "end", false, worthFigure(w, each)));
    }
    for (int percent = 0; percent <= 100; percent += 50) {
      double y = foulY(percent / 100.0);
      out.append("M").append(number(LEFT)).append(' ').append(number(y)).append("H").append(number(RIGHT));
      texts.add(text(LEFT - 5, y + 3.5, 12, "end", false, percent + " %"));
    }
    double tick = unit == LengthUnit.METRES ? (furthest > 0.8 ? 0.20 : furthest > 0.45 ? 0.10 : 0.05) : (furthest > 0.45 ? 6 : furthest > 0.24 ? 3 : 2) * LengthUnit.INCH_M;
    for (int k = (int) Math.ceil(nearest / tick); k * tick <= furthest; k++) {
      double at = x(k * tick);
      out.append("M").append(number(at)).append(' ').append(number(RUNWAY_BOTTOM)).append("v4");
      texts.add(text(at, RUNWAY_BOTTOM + 15, 12, "middle", false, tickFigure(k, tick)));
    }
    texts.add(text(LEFT, TOP - 33, 12, "start", true, heading()));
    texts.add(text(LEFT, FOUL_TOP - 8, 12, "start", true, "chance of a foul, each attempt"));
    return out.toString();
  }

  private String heading() {
    String of = attempts == 1 ? "one attempt" : "best of " + attempts;
    return inMetres() ? "expected " + of : goal instanceof Goal.Target ? "chance of the target, " + of : "chance of the place, " + of;
  }

  private static double nice(double rough) {
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double lead = rough / power;
    return power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
  }

  private String worthFigure(double worth, double each) {
    if (inMetres()) {
      return unit == LengthUnit.METRES ? String.format(Locale.ROOT, "%.2f", worth) : feet(worth);
    }
    return String.format(Locale.ROOT, each < 0.0095 ? "%.1f %%" : "%.0f %%", 100 * worth);
  }

  private static String feet(double metres) {
    long inches = Math.round(metres / LengthUnit.INCH_M);
    return inches / 12 + "' " + inches % 12 + "\"";
  }

  private String tickFigure(int k, double tick) {
    if (k == 0) {
      return "0";
    }
    long size = Math.round(unit == LengthUnit.METRES ? k * tick * 100 : k * tick / LengthUnit.INCH_M);
    return k == 1 ? unit == LengthUnit.METRES ? size + " cm" : size + " in" : String.valueOf(size);
  }

  // ---- marks ----

  private Rail rail(FixedAim at, boolean advised) {
    double x = x(at.aim_m());
    double worthY = Math.min(FLOOR, worthY(at.worth()));
    String path = "M" + number(x) + " " + number(advised ? TOP - 12 : worthY) + "V" + number(RUNWAY_BOTTOM);
    return new Rail(advised, round(x), round(worthY), round(foulY(at.foulChance())), path);
  }

  private void flags(List<Text> texts) {
    double best = x(advice.best().aim_m());
    double now = x(advice.now().aim_m());
    String anchor = best > WIDTH - 90 ? "end" : best < 90 ? "start" : "middle";
    texts.add(text(best, TOP - 16, 13, anchor, true, "aim " + signed(advice.best().aim_m())));
    if (Math.abs(best - now) > 6) {
      // under the curve, away from the aim where the two stand close
      boolean right = now < best == Math.abs(best - now) > CLOSE;
      texts.add(text(now + (right ? 6 : -6), FLOOR - 8, 12, right ? "start" : "end", true, "now " + signed(advice.now().aim_m())));
    }
    // to the left of its point the curve of the fouls lies lower, so a figure stands free there
    boolean apart = Math.abs(best - now) > CLOSE || Math.abs(best - now) <= 6 || best < now;
    foul(texts, best, advice.best().foulChance(), true, apart);
    if (Math.abs(best - now) > 6) {
      foul(texts, now, advice.now().foulChance(), false, Math.abs(best - now) > CLOSE || now < best);
    }
  }

  private static void foul(List<Text> texts, double x, double chance, boolean strong, boolean left) {
    boolean at = left ? x > LEFT + 36 : x > RIGHT - 36;
    texts.add(text(x + (at ? -5 : 5), foulY(chance) - (at ? 5 : 9), 12, at ? "end" : "start", strong, percent(chance)));
  }

  private String range() {
    double from = x(advice.furthest_m());
    double to = x(advice.nearest_m());
    return to - from < 3 ? "" : "M" + number(from) + " " + number(FLOOR + 3) + "v6h" + number(to - from) + "v-6";
  }

  private List<Band> bands() {
    double reach = Estimate.Z95 * form.gapSd_m();
    List<Band> out = new ArrayList<>();
    for (double at : new double[] {advice.now().aim_m(), advice.best().aim_m()}) {
      double from = x(at + reach);
      double to = x(at - reach);
      double y = laneY(at == advice.best().aim_m());
      out.add(new Band(from, to, StripPaths.lens(from, to, y, 17)));
    }
    return out;
  }

  private static double laneY(boolean advised) {
    return advised ? RUNWAY_TOP + 33 : RUNWAY_TOP + 12;
  }

  /** The shoe's toe stands at the gap: a shoe is drawn 28 cm long where there is room. */
  private List<Print> prints() {
    double length = Math.min(34, Math.max(22, 0.28 * (RIGHT - LEFT) / (furthest - nearest) / 2));
    double now = x(advice.now().aim_m()) - length / 2;
    double best = x(advice.best().aim_m()) - length / 2;
    return List.of(
        new Print(0, round(now), laneY(false), length, right, Sole.path(now, laneY(false), length, right)),
        new Print(1, round(best), laneY(true), length, right, Sole.path(best, laneY(true), length, right)));
  }

  private static Text text(double x, double y, double size, String anchor, boolean strong, String said) {
    return new Text(round(x), round(y), size, anchor, 0, strong, said);
  }

  // ---- words ----

  private String signed(double gap) {
    return gap < -0.005 ? unit.writeSmall(gap) + " over" : unit.writeSmall(gap);
  }

  private static String percent(double chance) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * chance);
  }

  private String worthSaid(double worth) {
    return inMetres() ? unit.write(worth) : percent(worth);
  }

  private String title() {
    return "Where to aim: " + signed(advice.best().aim_m()) + " behind the line";
  }

  private String said() {
    FixedAim b = advice.best();
    FixedAim n = advice.now();
    return "The board at the right, the aim behind it to the left. The foot falls " + signed(n.aim_m())
        + (n.aim_m() < -0.005 ? "" : " behind the line") + " on average now: " + heading() + " " + worthSaid(n.worth()) + ", fouls " + percent(n.foulChance())
        + ". Aimed at " + signed(b.aim_m()) + ": " + worthSaid(b.worth()) + ", fouls " + percent(b.foulChance())
        + ". The take-off foot is the " + (right ? "right (filled)" : "left (outlined)") + ".";
  }
}
