package boundwright.meet;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the one who enters an attempt had seen, and when it was entered.
 *
 * @param upTo number of the newest attempt of the meet that their page showed; 0 for none
 * @param own numbers of later attempts that the same phone entered itself
 * @param at when it was entered, by the program's clock; null if not known
 */
public record Hand(long upTo, List<Long> own, @Nullable Instant at) {
  /** Takes a copy. */
  public Hand {
    own = List.copyOf(own);
  }

  /** Somebody who has the meet as it is before them. */
  public static Hand seeingAll(@Nullable Instant at) {
    return new Hand(Long.MAX_VALUE, List.of(), at);
  }

  /** Whether they knew of an attempt. */
  boolean knows(KeptAttempt there) {
    return there.id() <= upTo || own.contains(there.id());
  }
}
