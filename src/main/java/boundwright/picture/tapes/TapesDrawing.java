package boundwright.picture.tapes;

import static boundwright.picture.StripPaths.number;
import static boundwright.picture.StripPaths.round;

import boundwright.picture.Lettering.Style;
import boundwright.picture.Lettering;
import boundwright.picture.StripPaths;
import boundwright.picture.strip.RunwayStrip.Dot;
import boundwright.picture.tapes.TapesPicture.Bar;
import boundwright.picture.tapes.TapesPicture.Box;
import boundwright.picture.tapes.TapesPicture.Laid;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Lays out the tapes of the day. The runway is to scale; the figures and names beside it are pushed apart until all can be read. */
final class TapesDrawing {
  private static final double NARROW = 328;
  private static final double WIDE = 1080;
  private static final double RUNWAY = 54;
  private static final double STAND_OUT = 7;
  private static final double SAND = 40;
  private static final double FIGURE = 22;
  private static final double NAMES = 14;
  private static final double LINE = 18;
  private static final double SCALE = 12;
  /** Least drawing units in a metre of the runway drawn downwards. */
  private static final double LEAST = 12;
  /** Least room beside another for the names under a tape. */
  private static final double SLOT = 124;
  private static final double GAP = 12;

  private final List<Laid> laid;
  private final LengthUnit unit;
  private final double far_m;
  private final List<Bar> bars = new ArrayList<>();
  private final List<String> leaders = new ArrayList<>();
  private final List<Lettering> words = new ArrayList<>();

  TapesDrawing(List<Laid> laid, LengthUnit unit) {
    this.laid = laid.stream().sorted(Comparator.comparingDouble(Laid::at_m)).toList();
    this.unit = unit;
    this.far_m = laid.stream().mapToDouble(Laid::at_m).max().orElse(10) + 1;
  }

  /** From left to right if the names find room side by side, else downwards. */
  TapesPicture wide() {
    return laid.size() * (SLOT + GAP) <= WIDE ? along() : down();
  }

  // ---- from left to right, sand at the right end ----

  private TapesPicture along() {
    double top = 26;
    double bottom = top + RUNWAY;
    double sandX = WIDE - 2 * SAND;
    double scale = (sandX - 16) / far_m;
    double slot = Math.min(220, WIDE / Math.max(1, laid.size()) - GAP);
    List<Laid> fromLeft = laid.stream().sorted(Comparator.comparingDouble(Laid::at_m).reversed()).toList();
    double[] at = fromLeft.stream().mapToDouble(t -> sandX - scale * t.at_m()).toArray();
    double[] left = apart(at, slot);
    double figureY = bottom + 34 + FIGURE;
    double lowest = figureY;
    for (int i = 0; i < fromLeft.size(); i++) {
      Laid tape = fromLeft.get(i);
      bars.add(new Bar(new Box(round(at[i] - 2.5), top - 2, 5, RUNWAY + 4), !tape.sure()));
      leaders.add("M" + number(at[i]) + " " + number(bottom + 2) + "L" + number(left[i]) + " " + number(figureY - FIGURE + 2) + "V" + number(figureY + 4));
      lowest = Math.max(lowest, block(tape, left[i] + 6, figureY, slot - 6));
    }
    StringBuilder ticks = new StringBuilder();
    for (int k = 0; k * step() <= far_m; k++) {
      double x = sandX - scale * k * step();
      ticks.append("M").append(number(x)).append(" ").append(number(top)).append("v-5");
      words.add(new Lettering(round(x), top - 9, SCALE, "middle", Style.QUIET, tick(k)));
    }
    List<Dot> grains = StripPaths.grains(sandX, WIDE, top, bottom);
    return new TapesPicture(
        WIDE, round(lowest + 6), true, title(), said(), new Box(0, top, sandX, RUNWAY),
        new Box(sandX, top - STAND_OUT, WIDE - sandX, RUNWAY + 2 * STAND_OUT), grains, ticks.toString(), bars, leaders, words);
  }

  /** Left edges of the blocks, each as near its tape as its neighbours let it. */
  private static double[] apart(double[] at, double slot) {
    double[] left = new double[at.length];
    double least = 0;
    for (int i = 0; i < at.length; i++) {
      left[i] = Math.max(least, at[i] - 8);
      least = left[i] + slot + GAP;
    }
    double most = WIDE - slot;
    for (int i = at.length - 1; i >= 0; i--) {
      left[i] = Math.max(0, Math.min(left[i], most));
      most = left[i] - slot - GAP;
    }
    return left;
  }

  // ---- from the sand downwards ----

  TapesPicture down() {
    double left = 44;
    double right = left + RUNWAY;
    double textX = right + 30;
    double room = NARROW - textX;
    double sandBottom = SAND;
    double scale = Math.max(LEAST, needed(room) / far_m);
    double[] tops = tops(room, sandBottom, scale);
    double lowest = 0;
    for (int i = 0; i < laid.size(); i++) {
      Laid tape = laid.get(i);
      double y = sandBottom + scale * tape.at_m();
      double figureY = tops[i] + FIGURE;
      bars.add(new Bar(new Box(left - 2, round(y - 2.5), RUNWAY + 4, 5), !tape.sure()));
      leaders.add("M" + number(right + 2) + " " + number(y) + "L" + number(textX - 4) + " " + number(figureY - FIGURE / 3));
      lowest = block(tape, textX, figureY, room);
    }
    double end = Math.max(sandBottom + scale * far_m, lowest + 4);
    StringBuilder ticks = new StringBuilder();
    for (int k = 0; k * step() * scale + sandBottom < end - 4; k++) {
      double y = sandBottom + scale * k * step();
      ticks.append("M").append(number(left)).append(" ").append(number(y)).append("h-5");
      words.add(new Lettering(left - 9, round(y + 4), SCALE, "end", Style.QUIET, tick(k)));
    }
    List<Dot> grains = StripPaths.grains(left - STAND_OUT, right + STAND_OUT, STAND_OUT, SAND - STAND_OUT);
    return new TapesPicture(
        NARROW, round(end), false, title(), said(), new Box(left, sandBottom, RUNWAY, round(end - sandBottom)),
        new Box(left - STAND_OUT, 0, RUNWAY + 2 * STAND_OUT, SAND), grains, ticks.toString(), bars, leaders, words);
  }

  /** Height of all blocks one under the other. */
  private double needed(double room) {
    return 0.8 * laid.stream().mapToDouble(t -> high(t, room)).sum();
  }

  /** Height of a figure and its names, with the gap below. */
  private static double high(Laid tape, double room) {
    int lines = tape.lines().stream().mapToInt(l -> Lettering.wrap(l, NAMES, Style.PLAIN, room).size()).sum();
    return FIGURE + LINE * lines + GAP;
  }

  /**
   * Upper edges of the blocks: each as near its tape as those above and below let it. Blocks that touch move as one, to the mean of
   * what they wish (pool adjacent violators, the common method for a rising order).
   */
  private double[] tops(double room, double sandBottom, double scale) {
    List<double[]> pools = new ArrayList<>(); // top, height, sum of wishes for the top, members
    for (Laid tape : laid) {
      double wish = sandBottom + scale * tape.at_m() - 2 * FIGURE / 3;
      double[] pool = {Math.max(0, wish), high(tape, room), wish, 1};
      while (!pools.isEmpty() && pools.get(pools.size() - 1)[0] + pools.get(pools.size() - 1)[1] > pool[0]) {
        double[] above = pools.remove(pools.size() - 1);
        double sum = above[2] + pool[2] - pool[3] * above[1];
        double members = above[3] + pool[3];
        pool = new double[] {Math.max(0, sum / members), above[1] + pool[1], sum, members};
      }
      pools.add(pool);
    }
    double[] out = new double[laid.size()];
    int i = 0;
    for (double[] pool : pools) {
      double top = pool[0];
      for (int member = 0; member < pool[3]; member++) {
        out[i] = top;
        top += high(laid.get(i), room);
        i++;
      }
    }
    return out;
  }

  // ---- both ----

  /** Writes the figure and what stands under it; answers where the last line ends. */
  private double block(Laid tape, double x, double figureY, double room) {
    words.add(new Lettering(round(x), round(figureY), FIGURE, "start", Style.BOLD, unit.write(tape.at_m())));
    double y = figureY;
    for (String said : tape.lines()) {
      for (String line : Lettering.wrap(said, NAMES, Style.PLAIN, room)) {
        y += LINE;
        words.add(new Lettering(round(x), round(y), NAMES, "start", Style.PLAIN, line));
      }
    }
    return y + 4;
  }

  private double step() {
    return unit == LengthUnit.METRES ? 5 : 10 * LengthUnit.FOOT_M;
  }

  private String tick(int k) {
    return unit == LengthUnit.METRES ? 5 * k + " m" : 10 * k + " ft";
  }

  private String title() {
    return laid.size() == 1 ? "The runway from above with one tape" : "The runway from above with " + laid.size() + " tapes";
  }

  private String said() {
    StringBuilder out = new StringBuilder("Distances from the near edge of the sand.");
    for (Laid tape : laid) {
      out.append(' ').append(unit.write(tape.at_m())).append(tape.sure() ? "" : ", outlined").append(": ").append(String.join("; ", tape.lines())).append('.');
    }
    return out.toString();
  }
}
