package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A model as bytes: a version, the counters, the mean, and the lower half of the covariance as doubles. The format may
 * change with the program; the reps are the truth and the model is learned again from them.
 */
final class ModelBytes {
  private static final int VERSION = 0x42570007;

  /** Bytes of what breaks showed. */
  private static final int BREAKS = 3 * 4 + 4 * 8 + 8 * 8;

  private static final int SURFACES = Surface.values().length;

  private static final Breaks.Expected NOTHING = new Breaks.Expected(0, 0, 0, 0);

  private ModelBytes() {}

  static byte[] write(FlightModel m) {
    Belief b = m.belief();
    int n = b.size();
    int rungs = Athlete.MAX_STEPS + 1;
    ByteBuffer out =
        ByteBuffer.allocate(4 * 6 + 8 + 8 + 8 + BREAKS + 8 * Scatter.size() + 4 * rungs + 4 * SURFACES + 8 * (n + n * (n + 1) / 2) + m.drills().bytes().length);
    LocalDate last = m.lastDate();
    out.putInt(VERSION).putInt(n).putInt(code(m.level())).putInt(m.growingFast() ? 1 : 0).putInt(m.reps()).putInt(m.measuredReps());
    out.putLong(last == null ? Long.MIN_VALUE : last.toEpochDay()).putDouble(m.unsettled());
    out.putLong(m.squad());
    write(out, m.breaks());
    for (double figure : m.scatter().figures()) {
      out.putDouble(figure);
    }
    for (int r : m.rungs()) {
      out.putInt(r);
    }
    for (int r : m.surfaces()) {
      out.putInt(r);
    }
    for (int i = 0; i < n; i++) {
      out.putDouble(b.mean(i));
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        out.putDouble(b.covariance(i, j));
      }
    }
    return out.put(m.drills().bytes()).array();
  }

  private static void write(ByteBuffer out, Breaks b) {
    out.putInt(b.shown()).putDouble(b.levels()).putDouble(b.sides()).putInt(b.own()).putDouble(b.ownLevels()).putDouble(b.ownSides());
    Breaks.Open open = b.open();
    out.putInt(open == null ? -1 : open.days());
    write(out, open == null ? NOTHING : open.level());
    write(out, open == null ? NOTHING : open.side());
  }

  private static void write(ByteBuffer out, Breaks.Expected e) {
    out.putDouble(e.mean()).putDouble(e.variance()).putDouble(e.added()).putDouble(e.factor());
  }

  private static Breaks breaks(ByteBuffer in) {
    Breaks closed = new Breaks(in.getInt(), in.getDouble(), in.getDouble(), in.getInt(), in.getDouble(), in.getDouble(), null);
    int days = in.getInt();
    Breaks.Expected level = expected(in);
    Breaks.Expected side = expected(in);
    return days < 0 ? closed : closed.opened(new Breaks.Open(days, level, side));
  }

  private static Breaks.Expected expected(ByteBuffer in) {
    return new Breaks.Expected(in.getDouble(), in.getDouble(), in.getDouble(), in.getDouble());
  }

  private static int code(Level level) {
    return switch (level) {
      case BEGINNER -> 1;
      case INTERMEDIATE, NOT_SET -> 2;
      case ADVANCED -> 3;
    };
  }

  private static Level level(int code) {
    return code == 1 ? Level.BEGINNER : code == 2 ? Level.INTERMEDIATE : Level.ADVANCED;
  }

  static Optional<FlightModel> read(byte[] bytes) {
    try {
      ByteBuffer in = ByteBuffer.wrap(bytes);
      if (in.getInt() != VERSION || in.getInt() != Traits.COUNT) {
        return Optional.empty();
      }
      Level level = level(in.getInt());
      boolean growingFast = in.getInt() == 1;
      int reps = in.getInt();
      int measured = in.getInt();
      long epochDay = in.getLong();
      @Nullable LocalDate last = epochDay == Long.MIN_VALUE ? null : LocalDate.ofEpochDay(epochDay);
      double unsettled = in.getDouble();
      long squad = in.getLong();
      Breaks breaks = breaks(in);
      double[] figures = new double[Scatter.size()];
      for (int i = 0; i < figures.length; i++) {
        figures[i] = in.getDouble();
      }
      int[] rungs = new int[Athlete.MAX_STEPS + 1];
      for (int i = 0; i < rungs.length; i++) {
        rungs[i] = in.getInt();
      }
      int[] surfaces = new int[SURFACES];
      for (int i = 0; i < surfaces.length; i++) {
        surfaces[i] = in.getInt();
      }
      Belief b = new Belief(Traits.COUNT);
      for (int i = 0; i < Traits.COUNT; i++) {
        b.setMean(i, in.getDouble());
      }
      for (int i = 0; i < Traits.COUNT; i++) {
        for (int j = 0; j <= i; j++) {
          b.setCovariance(i, j, in.getDouble());
        }
      }
      return Optional.of(
          new FlightModel(level, growingFast, squad, b, Scatter.of(figures), last, unsettled, breaks, reps, measured, rungs, surfaces, DrillSlots.read(in)));
    } catch (BufferUnderflowException cutShort) {
      return Optional.empty();
    }
  }
}
