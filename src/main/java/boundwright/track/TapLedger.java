package boundwright.track;

import java.util.OptionalLong;

/**
 * Which taps were logged, for good. A token stays when its rep is taken back, so that a phone that sends it late does not bring the
 * rep back.
 */
public interface TapLedger {
  /** The number of the rep that this token became, whether or not it was taken back since; empty for a new token. */
  OptionalLong repOf(String token);

  /** Keeps that this token became that rep, in the transaction that is open. */
  void keep(String token, long athleteId, long repId);
}
