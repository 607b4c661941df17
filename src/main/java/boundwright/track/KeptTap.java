package boundwright.track;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A tap as it is remembered.
 *
 * @param token 32 hexadecimal digits, made where the tap was made
 * @param kind what it was
 * @param athleteId whose page it was made on
 * @param repId the rep that it became or was about; null where that rep has not come
 * @param of token or number of the rep that it was about, null for a rep
 * @param said what it said of that rep: the athlete who did it, the faults; null for a rep and for taking back
 * @param kept when it came, by the server's clock; null for those kept before this was written down
 * @param made when it was made, or null where only the server's own clock knows
 */
public record KeptTap(
    String token, Kind kind, long athleteId, @Nullable Long repId, @Nullable String of, @Nullable String said, @Nullable Instant kept, @Nullable Made made) {
  /** What a tap was. */
  public enum Kind {
    /** A rep. */
    REP,
    /** A rep taken back. */
    UNDO,
    /** A rep given to the athlete who did it. */
    HAND,
    /** What was seen of a rep's technique. */
    LOOK
  }
}
