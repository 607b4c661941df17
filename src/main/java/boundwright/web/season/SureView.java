package boundwright.web.season;

import boundwright.picture.season.SeasonPicture;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How sure a plan is.
 *
 * @param season number
 * @param name of the season
 * @param running how far a simulation is, or null
 * @param failed why there is no answer, or empty
 * @param hours more that can be asked about
 * @param meets that can be left out
 * @param answer the last one, or null
 */
public record SureView(
    long season, String name, @Nullable Running running, String failed, List<DeedsView.Pick> hours, List<DeedsView.Pick> meets, @Nullable Answer answer) {
  /** Takes copies. */
  public SureView {
    hours = List.copyOf(hours);
    meets = List.copyOf(meets);
  }

  /**
   * A simulation that goes on.
   *
   * @param over seasons that are over
   * @param asked for
   */
  public record Running(int over, int asked) {}

  /**
   * An answer.
   *
   * @param head from how many seasons of which version
   * @param by which day the approaches are meant; empty where that differs
   * @param sure what stands beside it, each counted
   * @param squad load of all
   * @param athletes each with their chances
   * @param asked what else was asked, and what it buys
   */
  public record Answer(String head, String by, List<DeedsView.Line> sure, SeasonPicture squad, List<Athlete> athletes, List<Asked> asked) {
    /** Takes copies. */
    public Answer {
      sure = List.copyOf(sure);
      athletes = List.copyOf(athletes);
      asked = List.copyOf(asked);
    }
  }

  /**
   * An athlete.
   *
   * @param by which day the approaches are meant; empty where it is that of all
   * @param done sessions done, missed and changed, in words
   */
  public record Athlete(String name, String by, String done, SeasonPicture approaches, SeasonPicture load) {}

  /** Something that was asked, and what it buys. */
  public record Asked(String what, List<DeedsView.Line> buys) {
    /** Takes a copy. */
    public Asked {
      buys = List.copyOf(buys);
    }
  }
}
