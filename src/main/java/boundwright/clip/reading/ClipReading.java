package boundwright.clip.reading;

import boundwright.clip.Coherent;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A clip as read.
 *
 * @param athlete the coherent athlete behind it
 * @param contacts all contacts on one foot, and the landing last if it was seen
 * @param flights one fewer than contacts
 * @param match where the sequence begins, or null without a contact
 * @param verdicts the teaching points, contact by contact
 * @param scaled whether lengths stand
 * @param model name of the model behind the centre of mass
 * @param remarks sentences for the coach
 */
public record ClipReading(
    Coherent athlete,
    List<ReadContact> contacts,
    List<ReadFlight> flights,
    @Nullable SequenceMatch match,
    List<PointVerdict> verdicts,
    boolean scaled,
    String model,
    List<String> remarks) {

  /** Copies the lists. */
  public ClipReading {
    contacts = List.copyOf(contacts);
    flights = List.copyOf(flights);
    verdicts = List.copyOf(verdicts);
    remarks = List.copyOf(remarks);
  }
}
