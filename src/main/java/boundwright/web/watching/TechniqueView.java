package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.picture.FaultPicture;
import boundwright.technique.Fault;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTrends;
import boundwright.web.page.Figures;
import boundwright.web.page.Written;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was seen of one athlete's technique, drill by drill.
 *
 * @param athlete whose
 * @param drills one for each drill with judged reps, the newest first
 * @param chosen the one that is shown, or null when no rep was judged
 * @param wide its fault map for a desk, or null when nothing was ticked in it
 * @param narrow the same for a phone
 * @param catalogue the faults that can be ticked
 * @param own the coach's own
 * @param unread judged reps whose ticks cannot be read and which are left out
 * @param written what became of the form
 * @param token makes a double tap one entry
 * @param today the day
 */
public record TechniqueView(
    Athlete athlete,
    List<FaultTrends> drills,
    @Nullable FaultTrends chosen,
    @Nullable FaultPicture wide,
    @Nullable FaultPicture narrow,
    FaultCatalogue catalogue,
    List<Fault> own,
    int unread,
    Written written,
    String token,
    LocalDate today) {
  /** Judged reps of a drill. */
  public int judged(FaultTrends t) {
    return t.sessions().stream().mapToInt(FaultTrends.Session::judged).sum();
  }

  /** Clean ones among them. */
  public int clean(FaultTrends t) {
    return t.sessions().stream().mapToInt(FaultTrends.Session::clean).sum();
  }

  /** The address of a drill's page. */
  public String address(FaultTrends t) {
    return "/athlete/" + athlete.id() + "/technique?drill=" + t.sequence().letters();
  }

  /** The steps of a session in words. */
  public String from(FaultTrends.Session s) {
    return String.join(", ", s.steps().stream().map(Figures::rung).toList());
  }

  /** A day as it is read. */
  public String day(LocalDate day) {
    return Figures.day(day, today);
  }
}
