package boundwright.load;

import boundwright.load.Finding.Rule;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Findings for somebody who may not know of an athlete's body: the answer stays, the reason is left out. A stop by pain and one by a hold
 * cannot be told apart.
 */
final class Withheld {
  private static final Set<Rule> OF_THE_BODY = Set.of(Rule.PAIN, Rule.REFER, Rule.MEDICAL_HOLD, Rule.WAY_BACK, Rule.GROWING_CONTACTS, Rule.GROWING_SESSIONS);

  private Withheld() {}

  /** Whether a finding says something of the body: pain, a hold, a way back, growth. */
  static boolean ofTheBody(Finding f) {
    return OF_THE_BODY.contains(f.rule()) || f.source().equals(LoadSources.NO_SHOCK);
  }

  static List<Finding> from(List<Finding> all) {
    List<Finding> out = new ArrayList<>(all.stream().filter(f -> !ofTheBody(f)).toList());
    Answer answer = all.stream().filter(Withheld::ofTheBody).map(Finding::answer).reduce(Answer.ALLOWED, Answer::or);
    if (answer != Answer.ALLOWED) {
      out.add(
          new Finding(
              Rule.WITHHELD, answer, 0, 0, "", answer == Answer.REFUSED ? "No bounding now. The head coach knows why." : "With care today. The head coach knows why.",
              LoadSources.SESSION_BY_LEVEL));
    }
    return out;
  }
}
