package boundwright.technique;

import boundwright.evidence.Source;
import java.util.List;

/**
 * What a coach does about a fault.
 *
 * @param key what a rep keeps
 * @param label what is ticked, in two or three words
 * @param looksLike what is seen
 * @param causes likely causes, the likeliest first
 * @param say one short cue for the athlete
 * @param next what to do in the next reps
 * @param source where the advice comes from
 */
public record FaultAdvice(String key, String label, String looksLike, List<String> causes, String say, String next, Source source) {
  /** Takes a copy of the causes. */
  public FaultAdvice {
    causes = List.copyOf(causes);
  }
}
