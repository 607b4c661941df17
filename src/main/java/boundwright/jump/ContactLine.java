package boundwright.jump;

import boundwright.flight.ContactModel;
import boundwright.inference.LinearBelief;
import boundwright.quantity.Estimate;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * One athlete's contact line {@code loss = A0 + A1 x}, with its uncertainty, in the form that foretells this athlete's
 * own contacts better (leave-one-out cross-validation, exact in closed form). Bayesian linear regression drawn towards
 * {@link ContactPrior} where contacts are few. Immutable.
 */
public final class ContactLine {
  private final ContactForm form;
  private final LinearBelief belief;
  private final int contacts;
  private final Choice choice;

  /**
   * How the form was chosen.
   *
   * @param byGain mean log density of a left-out contact under the form by gain (0 when there are none)
   * @param byTakeOff the same by take-off speed
   * @param told false when the difference is smaller than twice its standard error: the data cannot tell the forms apart
   */
  public record Choice(double byGain, double byTakeOff, boolean told) {}

  private ContactLine(ContactForm form, LinearBelief belief, int contacts, Choice choice) {
    this.form = form;
    this.belief = belief;
    this.contacts = contacts;
    this.choice = choice;
  }

  /** Learns the line in the better form; with no contacts it is the prior's, by gain. */
  public static ContactLine learn(List<MeasuredContact> contacts, ContactPrior prior) {
    LinearBelief gain = fit(contacts, prior, ContactForm.BY_GAIN);
    LinearBelief takeOff = fit(contacts, prior, ContactForm.BY_TAKE_OFF);
    double[] g = leaveOneOut(gain, contacts, ContactForm.BY_GAIN);
    double[] t = leaveOneOut(takeOff, contacts, ContactForm.BY_TAKE_OFF);
    int n = contacts.size();
    double sumG = 0;
    double sumT = 0;
    for (int i = 0; i < n; i++) {
      sumG += g[i];
      sumT += t[i];
    }
    double mean = n == 0 ? 0 : (sumG - sumT) / n;
    double ss = 0;
    for (int i = 0; i < n; i++) {
      double d = g[i] - t[i] - mean;
      ss += d * d;
    }
    double error = n < 2 ? Double.POSITIVE_INFINITY : Math.sqrt(ss / (n - 1) * n);
    Choice choice = new Choice(n == 0 ? 0 : sumG / n, n == 0 ? 0 : sumT / n, Math.abs(sumG - sumT) > 2 * error);
    return sumG >= sumT
        ? new ContactLine(ContactForm.BY_GAIN, gain, n, choice)
        : new ContactLine(ContactForm.BY_TAKE_OFF, takeOff, n, choice);
  }

  /** Learns the line in a given form, whatever the data say of the other. */
  public static ContactLine learn(List<MeasuredContact> contacts, ContactPrior prior, ContactForm form) {
    ContactLine better = learn(contacts, prior);
    return better.form == form ? better : new ContactLine(form, fit(contacts, prior, form), contacts.size(), better.choice);
  }

  private static LinearBelief fit(List<MeasuredContact> contacts, ContactPrior prior, ContactForm form) {
    LinearBelief b = prior.belief(form);
    for (MeasuredContact c : contacts) {
      b.tell(design(form.input(c)), c.loss(), 1);
    }
    return b;
  }

  private static double[] leaveOneOut(LinearBelief all, List<MeasuredContact> contacts, ContactForm form) {
    double[] out = new double[contacts.size()];
    for (int i = 0; i < out.length; i++) {
      MeasuredContact c = contacts.get(i);
      double[] x = design(form.input(c));
      LinearBelief without = all.copy();
      without.untell(x, c.loss(), 1);
      out[i] = without.logPredictive(x, c.loss(), 1);
    }
    return out;
  }

  private static double[] design(double x) {
    return new double[] {1, x};
  }

  /** The form in use. */
  public ContactForm form() {
    return form;
  }

  /** How it was chosen. */
  public Choice choice() {
    return choice;
  }

  /** Contacts it was learned from. */
  public int contacts() {
    return contacts;
  }

  /** A0 [m/s]. */
  public Estimate intercept() {
    return belief.estimate(new double[] {1, 0});
  }

  /** A1, the velocity conversion coefficient [-]. */
  public Estimate slope() {
    return belief.estimate(new double[] {0, 1});
  }

  /**
   * The line's own height [m/s] at an input: how well the line is known there, without the noise of one contact.
   *
   * @param input vertical speed gained, or at take-off, as {@link #form()} says [m/s]
   */
  public Estimate lossAt(double input) {
    return belief.estimate(design(input));
  }

  /** Standard deviation of one contact about the line [m/s]. */
  public Estimate noise() {
    return belief.noise();
  }

  /** The middle line. */
  public ContactModel middle() {
    return form.line(belief.mean(0), belief.mean(1));
  }

  /** What is often said of such an A1 (thresholds from memory); the athlete's own optimum is computed, not read off it. */
  public String often() {
    Estimate a1 = slope();
    return a1.p95() <= 0.5
        ? "Lines this flat are often said to go with a long hop."
        : a1.p05() >= 0.9
            ? "Lines this steep are often said to go with a long jump."
            : "At such an A1 there is often little between the shares, or the data cannot tell.";
  }

  double[] mean() {
    return new double[] {belief.mean(0), belief.mean(1)};
  }

  public double[] draw(RandomGenerator random) {
    return belief.draw(random);
  }

  /** Chance that {@code c + p0 A0 + p1 A1} is above 0. */
  double chancePositive(double c, double p0, double p1) {
    return belief.chanceAbove(new double[] {p0, p1}, -c);
  }

  Estimate estimate(double c, double p0, double p1) {
    return belief.estimate(new double[] {p0, p1}).plus(c);
  }
}
