package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.load.LoadSources;
import boundwright.load.Verdict;

/**
 * All that is asked of the load before speed is added: does it refuse, and is there pain. The one place where this room
 * reads the verdict.
 *
 * @param refused whether the load account refuses, or a leg is on its way back to what it carried
 * @param said its answer in words
 * @param source where it comes from
 * @param pain whether pain stands above the safe range
 * @param painSaid the pain in words
 * @param painSource where the range comes from
 */
public record LoadAnswer(boolean refused, String said, Source source, boolean pain, String painSaid, Source painSource) {
  /**
   * A verdict as it is asked here.
   *
   * @param back whether a leg is on its way back
   */
  public static LoadAnswer of(Verdict verdict, boolean back) {
    String said = verdict.answer().label();
    Source source = Gate.LADDER;
    if (!verdict.concerns().isEmpty()) {
      said += ": " + verdict.concerns().get(0).rule().label();
      source = verdict.concerns().get(0).source();
    }
    boolean refused = verdict.answer() == Answer.REFUSED;
    if (!refused && back) {
      // within its stage it may train, but speed and the former week are not both added to one leg
      refused = true;
      said = "a leg on its way back";
      source = LoadSources.WAY_BACK;
    }
    for (Finding f : verdict.findings()) {
      if (f.rule() == Finding.Rule.PAIN || f.rule() == Finding.Rule.REFER) {
        return new LoadAnswer(refused, said, source, f.answer() != Answer.ALLOWED,
            Math.round(f.value()) + " of 10, " + f.answer().label(), f.source());
      }
    }
    return new LoadAnswer(refused, said, source, false, "none entered in seven days", LoadSources.PAIN);
  }
}
