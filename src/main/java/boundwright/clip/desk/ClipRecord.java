package boundwright.clip.desk;

import boundwright.athlete.Surface;
import boundwright.clip.Box;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.Setup;
import boundwright.footfall.Sequence;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All that is kept of a clip but its body points.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param date day on which it was filmed
 * @param fileName name the file came with
 * @param sequence asked on the card, or null when it is to be recognised
 * @param approachSteps 0 to 26
 * @param surface what was bounded on
 * @param markToSand_m from the take-off mark to the near edge of the sand [m], or null
 * @param state how far it has come
 * @param perMille of the film read so far, 0 to 1000
 * @param trouble the sentence with which it was refused, or null
 * @param filmKept whether the film itself is still there
 * @param box drawn round the athlete, or null
 * @param boxFrame number of the film's frame in which it was drawn, from 0
 * @param setup marks and scale
 * @param corrections by hand, in order
 * @param repId the rep logged from it, or 0
 * @param added when it came in
 */
public record ClipRecord(
    long id,
    long athleteId,
    LocalDate date,
    String fileName,
    @Nullable Sequence sequence,
    int approachSteps,
    Surface surface,
    @Nullable Double markToSand_m,
    ClipState state,
    int perMille,
    @Nullable String trouble,
    boolean filmKept,
    @Nullable Box box,
    int boxFrame,
    Setup setup,
    List<Correction> corrections,
    long repId,
    Instant added) {
  /** Copies the corrections. */
  public ClipRecord {
    corrections = List.copyOf(corrections);
  }
}
