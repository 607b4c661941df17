package boundwright.athlete.growth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** An invented person whose height and speed are known at every age [y]. */
interface Growing {
  LocalDate BORN = LocalDate.of(2010, 3, 1);

  /** Standing height [cm]. */
  double height_cm(double age);

  /** Its slope [cm/y]. */
  double speed_cm_y(double age);

  /** Age at the greatest speed of the spurt [y], to a hundredth. */
  double peak();

  static double age(LocalDate day) {
    return GrowthTrend.years(BORN, day);
  }

  private Measurement read(LocalDate day, Random r) {
    double read = height_cm(age(day)) + GrowthTrend.READING_SD_CM * r.nextGaussian();
    return new Measurement(0, day, Math.round(10 * read) / 1000.0, null, null, "coach");
  }

  /** Heights from about 10 to 17 years, 4 to 12 weeks apart, read with an error and written to a millimetre. */
  default List<Measurement> measured(Random r) {
    List<Measurement> out = new ArrayList<>();
    LocalDate day = BORN.plusYears(10).plusDays(r.nextInt(60));
    while (age(day) <= 17) {
      out.add(read(day, r));
      day = day.plusDays(28 + r.nextInt(57));
    }
    return out;
  }

  /**
   * Heights from about 9 to 18 years.
   *
   * @param months between two of them
   * @param gap whether nobody measured for half a year, which begins between 11 and 15 years
   */
  default List<Measurement> measured(Random r, int months, boolean gap) {
    List<Measurement> out = new ArrayList<>();
    LocalDate first = BORN.plusYears(9).plusDays(r.nextInt(60));
    LocalDate away = BORN.plusYears(11).plusDays(r.nextInt(4 * 365));
    for (int i = 0; age(first.plusMonths((long) months * i)) <= 18; i++) {
      LocalDate day = first.plusMonths((long) months * i);
      if (!gap || day.isBefore(away) || !day.isBefore(away.plusMonths(6))) {
        out.add(read(day, r));
      }
    }
    return out;
  }
}
