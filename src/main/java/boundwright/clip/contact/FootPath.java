package boundwright.clip.contact;

import boundwright.clip.signal.Smoother;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * One point of a foot over the clip: the samples as seen, in metres, with wild ones taken out, and their smoothed path.
 *
 * @param times [s]
 * @param x samples forward [m], NaN where missing or wild
 * @param y samples up [m]
 * @param smooth the smoothed path
 * @param forward_m standard deviation of each sample, forward [m]
 * @param up_m the same up [m]
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
record FootPath(double[] times, double[] x, double[] y, Smoother.Path smooth, double[] forward_m, double[] up_m) {

  /** A sample so far from the smoothed path tells nothing about an event [m]; the path itself lags by less (judgement). */
  private static final double FAR_M = 0.08;

  /** The path of a joint of a foot, or null where it was hardly ever seen. */
  static @Nullable FootPath of(Track metres, Motion motion, Joint joint, Foot foot) {
    BodyPoint p = BodyPoint.of(joint, foot);
    Smoother.Path path = motion.path(p);
    if (path == null) {
      return null;
    }
    double[] x = metres.xs(p);
    double[] y = metres.ys(p);
    for (int i = 0; i < x.length; i++) {
      if (path.wild()[i] || Math.hypot(x[i] - path.x()[i], y[i] - path.y()[i]) > FAR_M) {
        x[i] = Double.NaN;
        y[i] = Double.NaN;
      }
    }
    double[] sd = new double[x.length];
    Arrays.fill(sd, path.noise());
    return new FootPath(metres.times(), x, y, path, sd, sd);
  }

  /** The frames between two times in which the point was seen. */
  int[] between(double from, double to) {
    return IntStream.range(0, times.length).filter(i -> times[i] >= from && times[i] <= to && !Double.isNaN(x[i])).toArray();
  }

  /** Values at some frames. */
  static double[] at(int[] frames, double[] of) {
    return IntStream.of(frames).mapToDouble(i -> of[i]).toArray();
  }

  /** The errors of the samples forward in some frames, their standard deviations so many times what was measured. */
  LastingErrors forwardErrors(int[] frames, double by) {
    return errors(frames, forward_m, by);
  }

  /** The same up. */
  LastingErrors upErrors(int[] frames, double by) {
    return errors(frames, up_m, by);
  }

  private LastingErrors errors(int[] frames, double[] sd, double by) {
    return new LastingErrors(at(frames, times), IntStream.of(frames).mapToDouble(i -> by * sd[i]).toArray());
  }

  /** How many samples were seen between two times. */
  int seen(double from, double to) {
    return between(from, to).length;
  }
}
