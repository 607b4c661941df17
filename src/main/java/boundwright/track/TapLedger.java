package boundwright.track;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What was tapped where, by token, for good. A token stays when its rep is taken back, so that a phone that sends it late does not bring
 * the rep back; what was said of a rep that has not come yet waits here for it.
 */
public interface TapLedger {
  /** The tap with this token; empty for a new one. */
  Optional<KeptTap> of(String token);

  /** The rep's own tap, by the rep's number; empty where the rep came without a token. */
  Optional<KeptTap> ofRep(long repId);

  /** What was said of the rep with this token before it came, in the order in which it came here. */
  List<KeptTap> about(String token);

  /** Keeps a tap, in the transaction that is open. */
  void keep(KeptTap tap);

  /** Tokens of an athlete's taps that came since a day and are no rep now, in the order in which they came. */
  List<String> gone(long athleteId, LocalDate since);

  /** Says that a rep is another athlete's now, so that its token goes with that one. */
  void hand(long repId, long athleteId);
}
