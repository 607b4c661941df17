package boundwright.card;

import boundwright.evidence.Source;
import boundwright.load.DayVerdict;
import boundwright.picture.Drawn;
import boundwright.picture.FaultPicture;
import boundwright.picture.LadderPicture;
import boundwright.picture.LoadPicture;
import boundwright.picture.TestPicture;
import boundwright.readiness.GateAnswer;
import boundwright.technique.FaultAdvice;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one athlete on one day, on paper: what the guard and the gate answer and from what, with the pictures. It
 * describes; it holds no diagnosis and no chance of injury.
 *
 * @param name as called at the track
 * @param date the day, in words
 * @param place where
 * @param level in a word
 * @param day the verdict of the day, so far and with the plan
 * @param holds medical holds as facts, each in a sentence
 * @param overrides what the coach decided otherwise, each in a sentence
 * @param load contacts of each leg
 * @param ratings what the session ratings say
 * @param ladder the ladder, over {@code gateDays}
 * @param gateDays how many days of reps the gate looks at
 * @param answers of the gate, with their evidence
 * @param tests one for each test with a score
 * @param legs the legs against their own history, in sentences
 * @param faults one for each drill that was judged
 * @param unjudged why there is no fault map, or what it leaves out; empty when there is nothing to say
 * @param cautions what keeps it safe
 * @param footnote printed at the end if not empty, for example that the athlete is invented
 */
public record AthleteReport(
    String name,
    String date,
    String place,
    String level,
    DayVerdict day,
    List<String> holds,
    List<String> overrides,
    Drawn<LoadPicture> load,
    Ratings ratings,
    Drawn<LadderPicture> ladder,
    int gateDays,
    List<GateAnswer> answers,
    List<TestBlock> tests,
    List<String> legs,
    List<FaultBlock> faults,
    String unjudged,
    List<String> cautions,
    String footnote) {

  /** Takes copies. */
  public AthleteReport {
    holds = List.copyOf(holds);
    overrides = List.copyOf(overrides);
    answers = List.copyOf(answers);
    tests = List.copyOf(tests);
    legs = List.copyOf(legs);
    faults = List.copyOf(faults);
    cautions = List.copyOf(cautions);
  }

  /** Where the gate's measures and limits come from, each once, in the order of {@link #number}. */
  public List<String> gateSources() {
    return answers.stream().flatMap(a -> a.evidence().stream()).map(e -> e.source().line()).distinct().toList();
  }

  /** The number of a source in {@link #gateSources}, counted from 1. */
  public int number(Source source) {
    return gateSources().indexOf(source.line()) + 1;
  }

  /**
   * Session ratings, a description and no limit.
   *
   * @param weeks oldest first; empty when nothing was rated
   * @param means the weighted means, in a sentence; empty when nothing was rated
   * @param sources where the figures come from
   */
  public record Ratings(List<WeekLine> weeks, String means, List<String> sources) {
    /** Takes copies. */
    public Ratings {
      weeks = List.copyOf(weeks);
      sources = List.copyOf(sources);
    }
  }

  /**
   * A week of ratings, written.
   *
   * @param upTo its last day
   * @param rated {@code 3 of 3}
   * @param sum rating times minutes
   * @param monotony mean over standard deviation, or a dash
   * @param strain sum times monotony, or a dash
   */
  public record WeekLine(String upTo, String rated, String sum, String monotony, String strain) {}

  /**
   * A test.
   *
   * @param picture the scores
   * @param protocol how the latest was done
   * @param error where the error of the test comes from, in a sentence
   * @param notes what has to be known of the trend
   */
  public record TestBlock(Drawn<TestPicture> picture, String protocol, String error, List<String> notes) {
    /** Takes a copy. */
    public TestBlock {
      notes = List.copyOf(notes);
    }
  }

  /**
   * A drill.
   *
   * @param picture faults by contact
   * @param lines what to do about each fault, most frequent first
   */
  public record FaultBlock(Drawn<FaultPicture> picture, List<FaultLine> lines) {
    /** Takes a copy. */
    public FaultBlock {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A fault.
   *
   * @param label what it is called
   * @param trend whether it becomes rarer
   * @param look where to look for its beginning
   * @param advice what to say and do; null for a fault that was taken out of the list
   */
  public record FaultLine(String label, String trend, String look, @Nullable FaultAdvice advice) {}
}
