package boundwright.approach.full;

import boundwright.approach.weather.Weather;
import boundwright.flight.ContactModel;
import boundwright.flight.FlightChain;
import boundwright.flight.FlightChain.Push;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A squad that jumps by another law than the model's: a speed that nears its most with the steps (Furusawa, Hill and Parkinson's form along the
 * steps) into a chain of three contacts and flights, with speeds, heights and days that scatter, a form that wanders week by week, and wind
 * on the run-up. Nothing in it is a quadratic and nothing but the first guess of how jumpers are is shared with the model.
 */
final class SimulatedJumpers {
  static final LocalDate TODAY = LocalDate.of(2026, 5, 14);

  /**
   * How a squad trains.
   *
   * @param athletes how many
   * @param shortest fewest steps that are jumped from
   * @param longest most
   * @param days on which each athlete jumps, on average
   * @param perDay jumps of such a day
   * @param speed mean of the fastest run-up [m/s]
   * @param speedSd between athletes [m/s]
   * @param windNoted share of the days whose wind is noted, half of them by the flag
   */
  record Squad(int athletes, int shortest, int longest, int days, int perDay, double speed, double speedSd, double windNoted) {}

  private final Random random;
  final List<Jumper> jumpers = new ArrayList<>();
  final List<SeenDistance> seen = new ArrayList<>();

  /** One athlete with their form of every day of the year up to today, index 0 is today. */
  static final class Jumper {
    final long id;
    private final double most;
    private final double growing;
    private final double[] up = new double[3];
    private final double line0;
    private final double line1;
    private final double ground;
    private final double windSpeed;
    private final double[] form = new double[400];

    Jumper(long id, Squad s, Random r) {
      this.id = id;
      most = s.speed + s.speedSd * r.nextGaussian();
      growing = Math.max(3, 5.5 + r.nextGaussian());
      double strength = 0.15 * r.nextGaussian();
      up[0] = 2.05 + strength + 0.12 * r.nextGaussian();
      up[1] = 1.6 + strength + 0.12 * r.nextGaussian();
      up[2] = 2.1 + strength + 0.12 * r.nextGaussian();
      line0 = -1.1 + 0.15 * r.nextGaussian();
      line1 = 0.6 + 0.05 * r.nextGaussian();
      ground = 0.72 + 0.08 * r.nextGaussian();
      windSpeed = 0.05 + 0.02 * r.nextGaussian();
      for (int d = form.length - 2; d >= 0; d--) {
        // a week is better or worse than the one before by about half a percent
        form[d] = form[d + 1] + (d % 7 == 0 ? 0.005 * r.nextGaussian() : 0);
      }
    }

    /** One jump [m]; without dice it is the mean jumper's. */
    double jump(int steps, int daysAgo, double dayForm, double wind, Random r, double dice) {
      double speed = most * (1 - 0.57 * Math.exp(-steps / growing)) * (1 + form[daysAgo] + dayForm) + windSpeed * wind + dice * 0.10 * r.nextGaussian();
      List<Push> pushes = new ArrayList<>();
      double[] high = {1.15, 1.10, 1.10};
      double[] low = {0.98, 0.98, 0.62};
      for (int i = 0; i < 3; i++) {
        // faster runs leave less time to lift
        double lift = up[i] * (1 + form[daysAgo] + dayForm) - 0.03 * (speed - 8) + dice * 0.07 * r.nextGaussian();
        pushes.add(new Push(lift, high[i], low[i], ground + (i == 2 ? 0.2 : 0)));
      }
      return FlightChain.run(new ContactModel.ByGain(line0, line1), speed, -0.3, pushes).stream().mapToDouble(FlightChain.Link::length).sum();
    }

    /** Mean of many jumps today from so many steps in still air [m]. */
    double level(int steps, Random r) {
      double sum = 0;
      for (int i = 0; i < 400; i++) {
        sum += jump(steps, 0, 0.008 * r.nextGaussian(), 0, r, 1);
      }
      return sum / 400;
    }

    /** A jump on some day near today in still air [m]. */
    double single(int steps, Random r) {
      return centimetre(jump(steps, 0, 0.008 * r.nextGaussian(), 0, r, 1));
    }
  }

  SimulatedJumpers(Squad s, long seed) {
    random = new Random(seed);
    for (int a = 0; a < s.athletes; a++) {
      Jumper who = new Jumper(a + 1, s, random);
      jumpers.add(who);
      // an athlete jumps from a stretch of steps of their own; only some of them reach the longest
      int top = s.shortest + 2 + 2 * random.nextInt(Math.max(1, (s.longest - s.shortest) / 2));
      int days = Math.max(1, s.days / 2 + random.nextInt(s.days));
      for (int d = 0; d < days; d++) {
        int ago = random.nextInt(240);
        double dayForm = 0.008 * random.nextGaussian();
        double wind = 1.4 * random.nextGaussian();
        int steps = Math.min(top, s.shortest + 2 * random.nextInt((top - s.shortest) / 2 + 1));
        boolean noted = random.nextDouble() < s.windNoted;
        boolean flag = random.nextBoolean();
        for (int j = 0; j < s.perDay; j++) {
          double gust = wind + 0.4 * random.nextGaussian();
          double m = who.jump(steps, ago, dayForm, gust, random, 1);
          double told = Math.max(-8, Math.min(12, flag ? Math.rint(gust + random.nextGaussian()) : Math.round(gust * 10) / 10.0));
          Weather w = !noted ? Weather.UNKNOWN : new Weather(told, flag ? Weather.From.FLAG : Weather.From.GAUGE, null, null);
          seen.add(new SeenDistance(who.id, TODAY.minusDays(ago), steps, Math.max(3, Math.min(19, centimetre(m))), w));
        }
      }
    }
  }

  private static double centimetre(double m) {
    return Math.floor(m * 100) / 100;
  }
}
