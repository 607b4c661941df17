package boundwright.jump;

import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import java.util.List;

/**
 * A published jump (or the mean of several) to mark on the share triangle as what it is. No name of an athlete.
 *
 * @param label what it was
 * @param shares hop, step and jump
 * @param source where it stood, with its standing
 */
public record ReferenceJump(String label, Shares shares, Source source) {
  /** All that were found with their lengths or shares. */
  public static final List<ReferenceJump> ALL =
      List.of(
          of("Women's Olympic final 2021, 15.67 m", 5.86, 3.82, 5.99, JumpSources.REFERENCE_JUMPS),
          of("Women's Olympic final 2021, 15.41 m", 5.65, 4.21, 5.55, JumpSources.REFERENCE_JUMPS),
          of("Women's world final 2019, 15.37 m", 5.71, 4.03, 5.63, JumpSources.REFERENCE_JUMPS),
          of("Men's world final 1995, 18.29 m", 6.05, 5.22, 7.02, JumpSources.REFERENCE_1995),
          of("Ten women, Thessaloniki 2008, mean", 36.5, 29.3, 34.2, JumpSources.REFERENCE_TEN_WOMEN));

  private static ReferenceJump of(String label, double hop, double step, double jump, Source source) {
    return new ReferenceJump(label, Shares.ofLengths(hop, step, jump), source);
  }
}
