package boundwright.clip.learn;

import boundwright.clip.learn.Label.End;
import boundwright.clip.learn.Label.Stand;
import boundwright.clip.propose.StepSamples;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.Arrays;
import java.util.Random;

/**
 * Lessons from one labelled clip, each time a little different: left and right renamed, the step's period known only so well, points
 * lost, the legs exchanged for a while, another cut. The same as {@code training/contacts/film.py} does with made-up clips.
 */
final class Varied {
  /** As many samples at most, as in training. */
  private static final int MOST = 320;
  /** The log of the step's period differs by so much; the program asks at .9 and 1.12 of what it found. */
  private static final double PERIOD_SD = 0.2;
  private static final double PERIOD_MOST = 1.6;
  /** Share of the points lost, at most, in how many of the lessons, and for how long [s]. */
  private static final double LOST = 0.08;
  private static final double LOST_CHANCE = 0.6;
  private static final double LOST_S = 0.035;
  /** In so many of the lessons the legs are exchanged once, for so many steps at most. */
  private static final double EXCHANGED_CHANCE = 0.3;
  private static final double EXCHANGED_STEPS = 0.5;
  /** Numbers of a sample from the left hip on: the legs. */
  private static final int LEGS_FROM = 14;

  private final Label label;
  private final Track track;
  private final double period;

  Varied(Label label) {
    this.label = label;
    track = label.track();
    period = label.period_s();
  }

  /** The clip as it is. */
  Lesson plain() {
    return lesson(track, period);
  }

  /** Another lesson. */
  Lesson next(Random random) {
    double by = Math.exp(PERIOD_SD * random.nextGaussian());
    Track seen = random.nextDouble() < LOST_CHANCE ? lost(LOST * random.nextDouble(), random) : track;
    Lesson out = cut(lesson(seen, period * Math.max(1 / PERIOD_MOST, Math.min(PERIOD_MOST, by))), random);
    if (random.nextDouble() < EXCHANGED_CHANCE) {
      out = exchanged(out, random);
    }
    return random.nextBoolean() ? out.renamed() : out;
  }

  private Track lost(double share, Random random) {
    Track.Builder out = track.edit();
    double step = track.medianStep();
    for (BodyPoint p : StepSamples.ofNetwork()) {
      double left = -1;
      for (int i = 0; i < track.frames(); i++) {
        if (left < 0 && random.nextDouble() < share * step / LOST_S) {
          left = -LOST_S * Math.log(1 - random.nextDouble());
        }
        // the hips tell which frames the clip has, so they stay
        if (left >= 0 && p != BodyPoint.NOSE && p != BodyPoint.LEFT_HIP && p != BodyPoint.RIGHT_HIP && track.seen(p, i)) {
          out.erase(p, i);
        }
        left -= step;
      }
    }
    return out.build();
  }

  private Lesson lesson(Track seen, double step_s) {
    StepSamples samples = StepSamples.of(seen, step_s);
    int n = samples.size();
    double wide = step_s / StepSamples.PER_STEP;
    float[][] goal = new float[3][n];
    float[] worth = new float[n];
    float[] legs = new float[n];
    for (int i = 0; i < n; i++) {
      double t = samples.times()[i];
      if (t < label.from_s() || t > label.to_s()) {
        continue;
      }
      worth[i] = 1;
      legs[i] = 1;
      for (Stand s : label.stands()) {
        double first = s.first_s(label.from_s() - wide);
        double last = s.last_s(label.to_s() + wide);
        double share = Math.max(0, Math.min(t + wide / 2, last) - Math.max(t - wide / 2, first)) / wide;
        goal[0][i] += s.of(Foot.LEFT) ? (float) share : 0;
        goal[1][i] += s.of(Foot.RIGHT) ? (float) share : 0;
        // an end that no hand set is only known to its error, and says nothing nearer to it
        worth[i] = unsure(s.down(), t) || unsure(s.up(), t) ? 0 : worth[i];
      }
      goal[0][i] = Math.min(1, goal[0][i]);
      goal[1][i] = Math.min(1, goal[1][i]);
      goal[2][i] = label.exchanged()[track.nearest(t)] ? 1 : 0;
    }
    return new Lesson(samples, goal, worth, legs);
  }

  private static boolean unsure(End e, double t) {
    return e.known() && !e.byHand() && Math.abs(t - e.time_s()) < e.sd_s();
  }

  private static Lesson cut(Lesson whole, Random random) {
    int n = whole.samples().size();
    if (n <= MOST) {
      return whole;
    }
    int from = random.nextInt(n - MOST + 1);
    int to = from + MOST;
    StepSamples s = whole.samples();
    float[][] goal = new float[3][];
    Arrays.setAll(goal, k -> Arrays.copyOfRange(whole.goal()[k], from, to));
    return new Lesson(
        new StepSamples(Arrays.copyOfRange(s.times(), from, to), Arrays.copyOfRange(s.points(), from, to), s.density()), goal,
        Arrays.copyOfRange(whole.worth(), from, to), Arrays.copyOfRange(whole.legs(), from, to));
  }

  private static Lesson exchanged(Lesson lesson, Random random) {
    int n = lesson.samples().size();
    int length = 1 + random.nextInt((int) (EXCHANGED_STEPS * StepSamples.PER_STEP));
    int from = random.nextInt(n);
    float[][] other = lesson.samples().renamed().points();
    float[][] points = lesson.samples().points().clone();
    float[][] goal = {lesson.goal()[0], lesson.goal()[1], lesson.goal()[2].clone()};
    for (int i = from; i < Math.min(n, from + length); i++) {
      points[i] = points[i].clone();
      System.arraycopy(other[i], LEGS_FROM, points[i], LEGS_FROM, StepSamples.WIDTH - LEGS_FROM);
      goal[2][i] = 1 - goal[2][i];
    }
    return new Lesson(new StepSamples(lesson.samples().times(), points, lesson.samples().density()), goal, lesson.worth(), lesson.legs());
  }
}
