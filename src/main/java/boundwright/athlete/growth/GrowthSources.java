package boundwright.athlete.growth;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import java.util.List;

/** Where what is said of growth comes from. */
public final class GrowthSources {
  /** The formula. */
  public static final Source OFFSET =
      new Source("maturity-offset", "Years from the height spurt's peak from age and height, with half a year of standard error; less sure for those "
          + "who are early or late. A formula for many, made for ages of 8 to 18", "Moore et al. 2015, Med Sci Sports Exerc 47:1755-1764", Standing.MEMORY);
  /** The reading. */
  public static final Source READING =
      new Source("height-reading", "One reading of a height is right to a standard deviation of 0.4 cm. Without shoes and at the same time of day: "
          + "in the evening people are about 1 cm shorter", "common practice", Standing.COMMON_PRACTICE);
  /** The speed. */
  public static final Source SPEED =
      new Source("growth-speed", "How fast somebody grows: trends about a boy's and a girl's course, one for each time of the spurt, weighed by the heights. "
          + "The courses are learned from 68 real children born in 1928 and 1929; how far somebody strays from them also from made-up growth",
          "heights in Tuddenham and Snyder 1954, Univ. California Publ. Child Dev. 1:183-364; the model is the makers'", Standing.READ);
  /** The settings. */
  public static final Source FAST =
      new Source("fast-growth", "Above 7 cm a year limits are lower, flights wander more, and a height is asked for at least every 12 weeks", "the makers",
          Standing.JUDGEMENT);
  /** Why care. */
  public static final Source SPURT =
      new Source("growth-spurt", "Complaints that go with growth come most often in the height spurt", "scoping review, Br J Sports Med 2024;58:1001", Standing.READ);

  /** All of them, for the sources page. */
  public static final List<Source> ALL = List.of(OFFSET, READING, SPEED, FAST, SPURT);

  private GrowthSources() {}
}
