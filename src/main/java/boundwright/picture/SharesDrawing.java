package boundwright.picture;

import static boundwright.picture.StripPaths.number;
import static boundwright.picture.StripPaths.round;

import boundwright.jump.BestShares;
import boundwright.jump.PhaseClass;
import boundwright.jump.ReferenceJump;
import boundwright.jump.Shares;
import boundwright.picture.SharesPicture.Area;
import boundwright.picture.SharesPicture.KeyLine;
import boundwright.picture.SharesPicture.Kind;
import boundwright.picture.SharesPicture.Mark;
import boundwright.picture.SharesPicture.Shown;
import boundwright.picture.SharesPicture.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** Lays out one triangle of shares: chooses the part that is shown, and turns shares into places. */
final class SharesDrawing {
  private static final double WIDTH = 360;
  private static final double SIDE = 284;
  private static final double HIGH = SIDE * Math.sqrt(3) / 2;
  private static final double LEFT = (WIDTH - SIDE) / 2;
  private static final double BOTTOM = 272;
  private static final double KEY_LINE = 19;
  /** The shown part of the triangle is at least so wide, as a part of 1. */
  private static final double LEAST_EXTENT = 0.12;
  private static final double MARGIN = 0.012;

  private final List<Shown> jumps;
  private final @Nullable BestShares best;
  private final List<ReferenceJump> references;
  private final double threshold;
  /** Smallest hop, step and jump shares shown, and how much is left for the three together. */
  private double hop;
  private double step;
  private double jump;
  private double extent;

  SharesDrawing(List<Shown> jumps, @Nullable BestShares best, List<ReferenceJump> references, double threshold) {
    this.jumps = jumps;
    this.best = best;
    this.references = references;
    this.threshold = threshold;
  }

  SharesPicture draw() {
    choosePart();
    List<Text> texts = new ArrayList<>();
    List<Area> areas = areas(texts);
    String grid = grid(texts);
    List<Mark> marks = marks();
    marks(texts);
    List<KeyLine> keys = keys();
    double height = BOTTOM + 48 + keys.size() * KEY_LINE;
    return new SharesPicture(
        WIDTH, height, title(), said(), areas, grid, path(corners()), region(best == null ? List.of() : best.reachable()),
        region(best == null ? List.of() : best.plateau()), marks, keys, texts);
  }

  // ---- which part of the triangle ----

  private void choosePart() {
    List<Shares> all = new ArrayList<>();
    jumps.forEach(j -> all.add(j.shares()));
    references.forEach(r -> all.add(r.shares()));
    if (best != null) {
      all.add(best.best().shares());
      all.add(best.now().shares());
      best.plateau().forEach(o -> all.add(o.shares()));
    }
    if (all.isEmpty()) {
      all.add(new Shares(0.36, 0.29, 0.35));
    }
    hop = least(all, Shares::hop);
    step = least(all, Shares::step);
    jump = least(all, Shares::jump);
    extent = 1 - hop - step - jump;
    while (extent < LEAST_EXTENT) {
      hop -= 0.01;
      step -= 0.01;
      jump -= 0.01;
      extent += 0.03;
    }
  }

  private static double least(List<Shares> all, ToDoubleFunction<Shares> of) {
    double least = all.stream().mapToDouble(of).min().orElse(0) - MARGIN;
    return Math.max(0, Math.floor(least * 100) / 100);
  }

  // ---- places ----

  private double x(double hopShare, double stepShare) {
    double jumpShare = 1 - hopShare - stepShare;
    return LEFT + SIDE * ((jumpShare - jump) / extent + (stepShare - step) / extent / 2);
  }

  private double y(double stepShare) {
    return BOTTOM - HIGH * (stepShare - step) / extent;
  }

  /** The corners of the part shown as hop and step shares: hop, step, jump. */
  private List<double[]> corners() {
    return List.of(new double[] {hop + extent, step}, new double[] {hop, step + extent}, new double[] {hop, step});
  }

  private String path(List<double[]> points) {
    StringBuilder out = new StringBuilder();
    for (double[] p : points) {
      out.append(out.isEmpty() ? "M" : "L").append(number(x(p[0], p[1]))).append(' ').append(number(y(p[1])));
    }
    return out.isEmpty() ? "" : out.append('Z').toString();
  }

  // ---- classes ----

  private List<Area> areas(List<Text> texts) {
    double lead = threshold / 100;
    List<Area> out = new ArrayList<>();
    // a point is {hop, step}; jump = 1 - hop - step
    List<double[]> hopLeads = cut(cut(corners(), 1, -1, lead), 2, 1, 1 + lead);
    List<double[]> jumpLeads = cut(cut(corners(), -2, -1, lead - 1), -1, -2, lead - 1);
    out.add(new Area(PhaseClass.BALANCED, path(corners())));
    add(out, texts, PhaseClass.HOP_DOMINATED, hopLeads);
    add(out, texts, PhaseClass.JUMP_DOMINATED, jumpLeads);
    double left = hopLeads.isEmpty() ? LEFT : rightOnFloor(hopLeads, LEFT);
    double right = jumpLeads.isEmpty() ? LEFT + SIDE : leftOnFloor(jumpLeads, LEFT + SIDE);
    if (right - left > 8) {
      label(texts, PhaseClass.BALANCED, (left + right) / 2, BOTTOM + 36);
    }
    return out;
  }

  private void add(List<Area> out, List<Text> texts, PhaseClass of, List<double[]> area) {
    if (area.isEmpty()) {
      return;
    }
    out.add(new Area(of, path(area)));
    double from = leftOnFloor(area, LEFT + SIDE);
    double to = rightOnFloor(area, LEFT);
    if (to - from > 30) {
      // the name keeps to the outer side, so that the narrow middle keeps its own
      boolean outerLeft = of == PhaseClass.HOP_DOMINATED;
      texts.add(
          new Text(round(outerLeft ? Math.max(from, 0) : Math.min(to, WIDTH)), BOTTOM + 36, 12, outerLeft ? "start" : "end", 0, false, of.label()));
    }
  }

  private static void label(List<Text> texts, PhaseClass of, double x, double y) {
    texts.add(new Text(round(x), y, 12, "middle", 0, false, of.label()));
  }

  private double leftOnFloor(List<double[]> area, double otherwise) {
    return area.stream().filter(p -> p[1] < step + 1e-6).mapToDouble(p -> x(p[0], p[1])).min().orElse(otherwise);
  }

  private double rightOnFloor(List<double[]> area, double otherwise) {
    return area.stream().filter(p -> p[1] < step + 1e-6).mapToDouble(p -> x(p[0], p[1])).max().orElse(otherwise);
  }

  /** The part of a polygon where {@code a hop + b step >= c} (Sutherland and Hodgman). */
  private static List<double[]> cut(List<double[]> polygon, double a, double b, double c) {
    List<double[]> out = new ArrayList<>();
    for (int i = 0; i < polygon.size(); i++) {
      double[] p = polygon.get(i);
      double[] q = polygon.get((i + 1) % polygon.size());
      double dp = a * p[0] + b * p[1] - c;
      double dq = a * q[0] + b * q[1] - c;
      if (dp >= 0) {
        out.add(p);
      }
      if (dp * dq < 0) {
        double t = dp / (dp - dq);
        out.add(new double[] {p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])});
      }
    }
    return out.size() < 3 ? List.of() : out;
  }

  // ---- grid ----

  private String grid(List<Text> texts) {
    double each = extent > 0.35 ? 0.10 : extent > 0.14 ? 0.05 : 0.02;
    StringBuilder out = new StringBuilder();
    for (double s = next(step, each); s < step + extent - 1e-6; s += each) {
      line(out, 1 - jump - s, s, hop, s);
      if (s > step + 0.003) {
        texts.add(new Text(round(x(hop, s) + 5), round(y(s) + 3.5), 12, "start", 0, false, percent(s)));
      }
    }
    for (double h = next(hop, each); h < hop + extent - 1e-6; h += each) {
      line(out, h, step, h, 1 - jump - h);
      if (h > hop + 0.003) {
        texts.add(new Text(round(x(h, 1 - jump - h) - 5), round(y(1 - jump - h) + 3.5), 12, "end", 0, false, percent(h)));
      }
    }
    for (double j = next(jump, each); j < jump + extent - 1e-6; j += each) {
      line(out, 1 - step - j, step, hop, 1 - hop - j);
      if (j > jump + 0.003) {
        texts.add(new Text(round(x(1 - step - j, step)), BOTTOM + 14, 12, "middle", 0, false, percent(j)));
      }
    }
    double midX = LEFT + SIDE / 4 - 30;
    double midY = BOTTOM - HIGH / 2;
    texts.add(new Text(round(midX), round(midY - 4), 12, "middle", -60, true, "hop %"));
    texts.add(new Text(round(WIDTH - midX), round(midY - 4), 12, "middle", 60, true, "step %"));
    texts.add(new Text(WIDTH / 2, BOTTOM + 24, 12, "middle", 0, true, "jump %"));
    return out.toString();
  }

  private static double next(double from, double each) {
    return Math.ceil(from / each - 1e-6) * each;
  }

  private void line(StringBuilder out, double hop1, double step1, double hop2, double step2) {
    out.append('M').append(number(x(hop1, step1))).append(' ').append(number(y(step1)))
        .append('L').append(number(x(hop2, step2))).append(' ').append(number(y(step2)));
  }

  // ---- what can be reached ----

  /** The outline of cells, row by row of step share: left ends upwards, right ends back. */
  private String region(List<BestShares.Option> cells) {
    if (best == null || cells.isEmpty()) {
      return "";
    }
    double cell = best.cellWidth();
    Map<Integer, double[]> rows = new TreeMap<>();
    for (BestShares.Option o : cells) {
      double from = Math.floor(o.shares().hop() / cell) * cell;
      double[] row = rows.computeIfAbsent((int) Math.floor(o.shares().step() / cell), k -> new double[] {from, from + cell});
      row[0] = Math.min(row[0], from);
      row[1] = Math.max(row[1], from + cell);
    }
    List<double[]> up = new ArrayList<>();
    List<double[]> down = new ArrayList<>();
    List<Map.Entry<Integer, double[]>> in = List.copyOf(rows.entrySet());
    for (int i = 0; i < in.size(); i++) {
      double low = in.get(i).getKey() * cell;
      double[] row = in.get(i).getValue();
      double[] levels = i == 0 && in.size() == 1 ? new double[] {low, low + cell} : i == 0 ? new double[] {low} : i == in.size() - 1 ? new double[] {low + cell} : new double[] {low + cell / 2};
      for (double s : levels) {
        up.add(new double[] {row[0], s});
        down.add(0, new double[] {row[1], s});
      }
    }
    up.addAll(down);
    return path(up);
  }

  // ---- marks ----

  private Mark mark(Kind kind, Shares s, String number) {
    return new Mark(kind, round(x(s.hop(), s.step())), round(y(s.step())), number);
  }

  private List<Mark> marks() {
    List<Mark> out = new ArrayList<>();
    for (int i = 0; i < references.size(); i++) {
      out.add(mark(Kind.REFERENCE, references.get(i).shares(), String.valueOf(i + 1)));
    }
    for (Shown j : jumps) {
      out.add(mark(j.newest() ? Kind.NEWEST : Kind.JUMP, j.shares(), ""));
    }
    if (best != null) {
      out.add(mark(Kind.NOW, best.now().shares(), ""));
      out.add(mark(bestKind(best), best.best().shares(), ""));
    }
    return out;
  }

  private static Kind bestKind(BestShares best) {
    return best.onEdge() ? Kind.BEST_ON_BOUND : Kind.BEST;
  }

  private void marks(List<Text> texts) {
    if (best == null) {
      return;
    }
    Mark b = mark(bestKind(best), best.best().shares(), "");
    Mark n = mark(Kind.NOW, best.now().shares(), "");
    boolean bestRight = b.x() >= n.x();
    texts.add(new Text(b.x() + (bestRight ? 10 : -10), b.y() - 6, 12, bestRight ? "start" : "end", 0, true, "best"));
    if (Math.hypot(b.x() - n.x(), b.y() - n.y()) > 14) {
      texts.add(new Text(n.x() + (bestRight ? -9 : 9), n.y() + 12, 12, bestRight ? "end" : "start", 0, true, "now"));
    }
  }

  private List<KeyLine> keys() {
    List<KeyLine> out = new ArrayList<>();
    if (best != null) {
      key(out, bestKind(best), "", best.onEdge() ? "best, on the edge of what was shown" : "best for this athlete");
      key(out, Kind.PLATEAU, "", "the plateau: within 5 cm of the best");
      key(out, Kind.REACHABLE, "", "within the speeds they have shown");
      key(out, Kind.NOW, "", "now, by their usual speeds");
    }
    if (!jumps.isEmpty()) {
      key(out, Kind.JUMP, "", jumps.size() == 1 ? "their jump" : "their jumps, the newest in a ring");
    }
    for (int i = 0; i < references.size(); i++) {
      ReferenceJump r = references.get(i);
      key(out, Kind.REFERENCE, String.valueOf(i + 1), r.label() + " (" + standing(r) + ")");
    }
    return out;
  }

  private static void key(List<KeyLine> out, Kind kind, String number, String said) {
    double y = BOTTOM + 62 + out.size() * KEY_LINE;
    out.add(new KeyLine(new Mark(kind, 14, y - 4, number), 28, y, said));
  }

  // ---- words ----

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f", 100 * share);
  }

  /** Its standing, short: {@code second-hand}, {@code from memory}, {@code read in the source}. */
  private static String standing(ReferenceJump r) {
    return r.source().standing().label().replaceFirst("[:,].*", "");
  }

  private static String threeShares(Shares s) {
    return String.format(Locale.ROOT, "%.1f / %.1f / %.1f %%", 100 * s.hop(), 100 * s.step(), 100 * s.jump());
  }

  private String title() {
    return best == null ? "Shares of hop, step and jump" : "Shares of hop, step and jump: best at " + threeShares(best.best().shares());
  }

  private String said() {
    StringBuilder out = new StringBuilder("A triangle: hop to the left, jump to the right, step upwards. ");
    jumps.stream().filter(Shown::newest).findFirst().ifPresent(
        j -> out.append("The newest jump ").append(threeShares(j.shares())).append(", ").append(j.shares().classify(threshold).label()).append(". "));
    if (best != null) {
      out.append("They jump ").append(threeShares(best.now().shares())).append(" now; the best for them is ").append(threeShares(best.best().shares()))
          .append(best.onEdge() ? ", on the edge of what was shown. " : ". ");
      List<Shares> p = best.plateauOutline();
      double low = p.stream().mapToDouble(Shares::hop).min().orElse(0);
      double high = p.stream().mapToDouble(Shares::hop).max().orElse(0);
      out.append("Within 5 cm of it lie hops from ").append(percent(low)).append(" to ").append(percent(high)).append(" %. ");
    }
    for (ReferenceJump r : references) {
      out.append(r.label()).append(": ").append(threeShares(r.shares())).append(" (").append(standing(r)).append("). ");
    }
    return out.toString().strip();
  }
}
