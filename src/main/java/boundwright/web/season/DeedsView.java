package boundwright.web.season;

import boundwright.web.page.Sent;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What can be done with a season: plan, publish, mend, undo.
 *
 * @param season its number
 * @param search how far a search is, or why it failed; or null
 * @param proposal what waits for a yes or a no, or null
 * @param mend the form of what happened, or null before anything is published
 * @param undo the version that an undo puts back, 0 for none
 * @param version the newest published, 0 for none
 */
public record DeedsView(long season, @Nullable Search search, @Nullable Proposed proposal, @Nullable Mend mend, int undo, int version) {
  /**
   * A search.
   *
   * @param going whether it goes on
   * @param thousandths of its time that are over
   * @param percent the same in words
   * @param best the best plan so far
   * @param failed why there is no proposal, or empty
   */
  public record Search(long season, boolean going, long thousandths, String percent, List<Line> best, String failed) {
    /** Takes a copy. */
    public Search {
      best = List.copyOf(best);
    }
  }

  /**
   * Something counted.
   *
   * @param what is counted
   * @param much how much of it
   */
  public record Line(String what, String much) {}

  /**
   * A proposal.
   *
   * @param number which
   * @param title in a few words
   * @param changed how many days change, in a sentence; empty for a first plan
   * @param byAthlete changed days of each
   * @param byWeek changed days of each week
   * @param first the first changes
   * @param rest the others
   * @param judged what the plan is judged by
   * @param against why it cannot be published; empty if it can
   */
  public record Proposed(
      long number, String title, String changed, List<Line> byAthlete, List<Line> byWeek, List<Change> first, List<Change> rest, List<Line> judged,
      List<String> against) {
    /** Takes copies. */
    public Proposed {
      byAthlete = List.copyOf(byAthlete);
      byWeek = List.copyOf(byWeek);
      first = List.copyOf(first);
      rest = List.copyOf(rest);
      judged = List.copyOf(judged);
      against = List.copyOf(against);
    }
  }

  /** A day that changes. */
  public record Change(String day, String athlete, String before, String after) {}

  /**
   * The form of what happened.
   *
   * @param sent what was written and refused, or nothing
   * @param today first day that can be changed
   * @param last of the season
   * @param missed sessions that were planned and are not in the log, and those of the next days
   * @param entered who is away and what is closed from today on
   */
  public record Mend(Sent sent, LocalDate today, LocalDate last, List<Pick> missed, List<Pick> athletes, List<Pick> venues, List<Entered> entered) {
    /** Takes copies. */
    public Mend {
      missed = List.copyOf(missed);
      athletes = List.copyOf(athletes);
      venues = List.copyOf(venues);
      entered = List.copyOf(entered);
    }
  }

  /**
   * Somebody who is away, or a place that is closed.
   *
   * @param said in words
   * @param athlete number, or empty
   * @param why they are away, or empty
   * @param place its key, or empty
   */
  public record Entered(String said, String athlete, String why, String place, LocalDate from, LocalDate to) {}

  /** A choice of a list. */
  public record Pick(String value, String said) {}
}
