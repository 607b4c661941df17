package boundwright.flight;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What the athletes of one squad say of each other before an athlete has reps of their own: the usual ratios of flights and how
 * widely athletes of this squad scatter. A snapshot: made from athletes learned without any squad, numbered, never changed, so
 * that the same snapshot and the same reps give the same model wherever it runs. An athlete's own reps are left out of
 * their own prior, and always win over it. Never changes.
 */
public final class SquadPrior {
  /** Reps that an athlete must have logged to speak for the squad (judgement). */
  public static final int LEAST_REPS = 12;
  /** Fewer others than this say nothing (judgement). */
  public static final int LEAST_OTHERS = 4;

  /** The last flight's share was seen when its standard deviation fell to this part of what it was (judgement). */
  private static final double SEEN = 0.5;
  private static final int VERSION = 0x53510002;
  /** No squad: what is believed of anybody. */
  public static final SquadPrior NONE = new SquadPrior(0, List.of());

  private final long number;
  private final List<Known> known;
  private @Nullable Said said;

  /** What is known of one athlete: traits and logarithms of the scatter's factors, each with its covariance. */
  @SuppressWarnings("ArrayRecordComponent") // private, never compared, never changed
  private record Known(long athlete, double[] traits, double[][] traitsCovariance, double[] scatter, double[][] scatterCovariance, Breaks breaks) {}

  private SquadPrior(long number, List<Known> known) {
    this.number = number;
    this.known = List.copyOf(known);
  }

  /** What they say together. */
  private record Said(Pooled traits, Pooled scatter) {}

  /** Worked out when somebody is learned, not when the snapshot is read: a program that starts has everybody's model already. */
  private synchronized Said said() {
    Said made = said;
    if (made == null) {
      Belief neutral = Traits.prior();
      int[] shared = Traits.shared();
      Pooled traits =
          new Pooled(
              neutral.means(shared),
              neutral.covariances(shared),
              known.stream().map(Known::traits).toList(),
              known.stream().map(Known::traitsCovariance).toList());
      Pooled scatter =
          new Pooled(
              Scatter.prior().logs(),
              Scatter.prior().logCovariance(),
              known.stream().map(Known::scatter).toList(),
              known.stream().map(Known::scatterCovariance).toList());
      made = new Said(traits, scatter);
      said = made;
    }
    return made;
  }

  /**
   * Makes a snapshot.
   *
   * @param number of the snapshot, above 0
   * @param alone the squad's models by the athlete's number, each learned from {@link #NONE}
   */
  public static SquadPrior of(long number, Map<Long, FlightModel> alone) {
    int[] shared = Traits.shared();
    List<Known> known = new ArrayList<>();
    new TreeMap<>(alone)
        .forEach(
            (id, m) -> {
              if (m.reps() >= LEAST_REPS) {
                known.add(known(id, m, shared));
              }
            });
    return new SquadPrior(number, known);
  }

  /**
   * What an athlete says. Of the last flight's share only who had last contacts measured: landings alone say little of it, and what
   * they seem to say is the same error in every athlete, which pooling would take for knowledge.
   */
  private static Known known(long id, FlightModel m, int[] shared) {
    double[] mean = m.belief().means(shared);
    double[][] covariance = m.belief().covariances(shared);
    double unseen = Traits.prior().variance(Traits.JUMP);
    for (int j = 0; j < shared.length; j++) {
      if (shared[j] == Traits.JUMP && covariance[j][j] > SEEN * SEEN * unseen) {
        for (int i = 0; i < shared.length; i++) {
          covariance[i][j] = 0;
          covariance[j][i] = 0;
        }
        covariance[j][j] = unseen;
        mean[j] = 0;
      }
    }
    return new Known(id, mean, covariance, m.scatter().logs(), m.scatter().logCovariance(), m.breaks());
  }

  /** The snapshot's number; 0 is no squad. */
  public long number() {
    return number;
  }

  /** How many athletes speak in it. */
  public int athletes() {
    return known.size();
  }

  private int place(long athlete) {
    for (int i = 0; i < known.size(); i++) {
      if (known.get(i).athlete() == athlete) {
        return i;
      }
    }
    return -1;
  }

  private boolean says(int without) {
    return known.size() - (without < 0 ? 0 : 1) >= LEAST_OTHERS;
  }

  /** What is believed of this athlete's traits before anything of their own is known. */
  Belief traits(long athlete) {
    Belief b = Traits.prior();
    int own = place(athlete);
    if (says(own)) {
      Pooled traits = said().traits;
      b.believe(Traits.shared(), traits.mean(own), traits.covariance(own));
    }
    return b;
  }

  /** Likewise of their scatter. */
  Scatter scatter(long athlete) {
    int own = place(athlete);
    return says(own) ? Scatter.around(said().scatter.mean(own), said().scatter.covariance(own)) : Scatter.prior();
  }

  /** What the breaks of the others showed; already one says something. */
  Breaks breaks(long athlete) {
    int shown = 0;
    double levels = 0;
    double sides = 0;
    for (Known k : known) {
      if (k.athlete() != athlete) {
        shown += k.breaks().own();
        levels += k.breaks().ownLevels();
        sides += k.breaks().ownSides();
      }
    }
    return Breaks.of(shown, levels, sides);
  }

  /** The snapshot as bytes for the store. */
  public byte[] toBytes() {
    int n = Traits.shared().length;
    int k = Scatter.KINDS;
    ByteBuffer out = ByteBuffer.allocate(4 + 4 + 8 + 4 + known.size() * (8 * (1 + n + n * n + k + k * k) + 4 + 16));
    out.putInt(VERSION).putInt(n).putLong(number).putInt(known.size());
    for (Known a : known) {
      out.putLong(a.athlete());
      write(out, a.traits(), a.traitsCovariance());
      write(out, a.scatter(), a.scatterCovariance());
      out.putInt(a.breaks().own()).putDouble(a.breaks().ownLevels()).putDouble(a.breaks().ownSides());
    }
    return out.array();
  }

  /** The snapshot from the store; empty if another version wrote it, so that it is made again. */
  public static Optional<SquadPrior> fromBytes(byte[] bytes) {
    try {
      ByteBuffer in = ByteBuffer.wrap(bytes);
      int n = Traits.shared().length;
      if (in.getInt() != VERSION || in.getInt() != n) {
        return Optional.empty();
      }
      long number = in.getLong();
      int count = in.getInt();
      List<Known> known = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        known.add(
            new Known(in.getLong(), row(in, n), square(in, n), row(in, Scatter.KINDS), square(in, Scatter.KINDS), own(in.getInt(), in.getDouble(), in.getDouble())));
      }
      return Optional.of(new SquadPrior(number, known));
    } catch (BufferUnderflowException cutShort) {
      return Optional.empty();
    }
  }

  private static void write(ByteBuffer out, double[] mean, double[][] covariance) {
    for (double m : mean) {
      out.putDouble(m);
    }
    for (double[] row : covariance) {
      for (double c : row) {
        out.putDouble(c);
      }
    }
  }

  private static Breaks own(int shown, double levels, double sides) {
    return new Breaks(shown, levels, sides, shown, levels, sides, null);
  }

  private static double[] row(ByteBuffer in, int n) {
    double[] out = new double[n];
    for (int i = 0; i < n; i++) {
      out[i] = in.getDouble();
    }
    return out;
  }

  private static double[][] square(ByteBuffer in, int n) {
    double[][] out = new double[n][];
    for (int i = 0; i < n; i++) {
      out[i] = row(in, n);
    }
    return out;
  }
}
