package boundwright.jump;

import boundwright.inference.LinearBelief;
import java.util.List;

/**
 * What is believed of an athlete's contact line before any contact of theirs: the squad's middle line and how far its
 * athletes differ from it, in both forms. An athlete with few contacts is drawn towards it, one with many is not.
 *
 * <p>Learned from the squad by expectation-maximisation on the random-coefficients model, closed form per round
 * (empirical Bayes; standing: worked). {@link #JUDGED}, the first guess of the makers, counts as two athletes in it, so
 * that a squad of one or two cannot pretend to know how much athletes differ.
 */
public final class ContactPrior {
  /** A0, A1, their spread between athletes and correlation, noise of one contact [m/s]: judgement, wide on purpose. */
  private static final Line GAIN_GUESS = guess(-1.0, 0.8, 0.6, 0.25);
  private static final Line TAKE_OFF_GUESS = guess(-0.4, 0.9, 0.7, 0.4);

  /** Before any squad. */
  public static final ContactPrior JUDGED = new ContactPrior(GAIN_GUESS, TAKE_OFF_GUESS, 0);

  private static final double GUESS_WORTH = 2;
  private static final int ROUNDS = 60;
  /** How many contacts the makers' and the squad's guess of the noise are worth. */
  private static final double NOISE_WORTH = 2;
  private static final double SQUAD_NOISE_WORTH = 10;

  private final Line gain;
  private final Line takeOff;
  private final int athletes;

  private static final class Line {
    private final double[] mean;
    private final double[][] covariance;
    private final double noiseSd;

    Line(double[] mean, double[][] covariance, double noiseSd) {
      this.mean = mean;
      this.covariance = covariance;
      this.noiseSd = noiseSd;
    }
  }

  private ContactPrior(Line gain, Line takeOff, int athletes) {
    this.gain = gain;
    this.takeOff = takeOff;
    this.athletes = athletes;
  }

  private static Line guess(double a0, double sd0, double a1, double sd1) {
    double c = -0.8 * sd0 * sd1;
    return new Line(new double[] {a0, a1}, new double[][] {{sd0 * sd0, c}, {c, sd1 * sd1}}, 0.25);
  }

  /**
   * Learned from a squad. Leave out the athlete whose line is wanted, or their contacts count twice.
   *
   * @param squad the contacts of each athlete; those with fewer than three are passed over
   */
  public static ContactPrior ofSquad(List<List<MeasuredContact>> squad) {
    List<List<MeasuredContact>> told = squad.stream().filter(s -> s.size() >= 3).toList();
    if (told.isEmpty()) {
      return JUDGED;
    }
    return new ContactPrior(
        learn(told, ContactForm.BY_GAIN, GAIN_GUESS), learn(told, ContactForm.BY_TAKE_OFF, TAKE_OFF_GUESS), told.size());
  }

  private static Line learn(List<List<MeasuredContact>> squad, ContactForm form, Line guess) {
    int k = squad.size();
    double[][] sums = new double[k][];
    double points = NOISE_WORTH;
    for (int i = 0; i < k; i++) {
      sums[i] = sums(squad.get(i), form);
      points += sums[i][0];
    }
    Line now = guess;
    for (int round = 0; round < ROUNDS; round++) {
      double[][] precision = inverse(now.covariance);
      double noise2 = now.noiseSd * now.noiseSd;
      double[][] each = new double[k][];
      double[][][] cov = new double[k][][];
      double[] mean = {GUESS_WORTH * guess.mean[0], GUESS_WORTH * guess.mean[1]};
      double squares = NOISE_WORTH * guess.noiseSd * guess.noiseSd;
      for (int i = 0; i < k; i++) {
        double[] s = sums[i];
        double[][] p = {
          {precision[0][0] + s[0] / noise2, precision[0][1] + s[1] / noise2},
          {precision[1][0] + s[1] / noise2, precision[1][1] + s[2] / noise2}
        };
        cov[i] = inverse(p);
        double r0 = precision[0][0] * now.mean[0] + precision[0][1] * now.mean[1] + s[3] / noise2;
        double r1 = precision[1][0] * now.mean[0] + precision[1][1] * now.mean[1] + s[4] / noise2;
        double b0 = cov[i][0][0] * r0 + cov[i][0][1] * r1;
        double b1 = cov[i][1][0] * r0 + cov[i][1][1] * r1;
        each[i] = new double[] {b0, b1};
        mean[0] += b0;
        mean[1] += b1;
        squares += s[5] - 2 * (b0 * s[3] + b1 * s[4]) + b0 * b0 * s[0] + 2 * b0 * b1 * s[1] + b1 * b1 * s[2]
            + cov[i][0][0] * s[0] + 2 * cov[i][0][1] * s[1] + cov[i][1][1] * s[2];
      }
      double weight = k + GUESS_WORTH;
      mean[0] /= weight;
      mean[1] /= weight;
      now = new Line(mean, between(each, cov, mean, guess, weight), Math.sqrt(squares / points));
    }
    return now;
  }

  private static double[][] between(double[][] each, double[][][] cov, double[] mean, Line guess, double weight) {
    double[][] out = new double[2][2];
    for (int r = 0; r < 2; r++) {
      for (int c = 0; c < 2; c++) {
        double sum = GUESS_WORTH * (guess.covariance[r][c] + (guess.mean[r] - mean[r]) * (guess.mean[c] - mean[c]));
        for (int i = 0; i < each.length; i++) {
          sum += cov[i][r][c] + (each[i][r] - mean[r]) * (each[i][c] - mean[c]);
        }
        out[r][c] = sum / weight;
      }
    }
    return out;
  }

  /** Count, sum x, sum x2, sum y, sum xy, sum y2. */
  private static double[] sums(List<MeasuredContact> contacts, ContactForm form) {
    double[] s = new double[6];
    for (MeasuredContact c : contacts) {
      double x = form.input(c);
      double y = c.loss();
      s[0]++;
      s[1] += x;
      s[2] += x * x;
      s[3] += y;
      s[4] += x * y;
      s[5] += y * y;
    }
    return s;
  }

  private static double[][] inverse(double[][] m) {
    double det = m[0][0] * m[1][1] - m[0][1] * m[1][0];
    return new double[][] {{m[1][1] / det, -m[0][1] / det}, {-m[1][0] / det, m[0][0] / det}};
  }

  /** How many athletes it was learned from; 0 for the makers' first guess. */
  public int athletes() {
    return athletes;
  }

  /** Middle A0 [m/s] and A1 [-] of a form. */
  public List<Double> middle(ContactForm form) {
    double[] m = line(form).mean;
    return List.of(m[0], m[1]);
  }

  private Line line(ContactForm form) {
    return form == ContactForm.BY_GAIN ? gain : takeOff;
  }

  LinearBelief belief(ContactForm form) {
    Line l = line(form);
    return new LinearBelief(l.mean, l.covariance, l.noiseSd, athletes == 0 ? NOISE_WORTH : SQUAD_NOISE_WORTH);
  }
}
