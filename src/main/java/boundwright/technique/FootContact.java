package boundwright.technique;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;

/** How the foot is taught to meet the ground. Schools differ, most at speed: the coach chooses, see {@link Teaching}. */
public enum FootContact {
  /** The default (common practice). */
  HEEL_ROLLS("Heel leads, foot rolls to the toe", "stabs with the toe", "heel leads, rolls to the toe", Sources.FAULTS),
  /** Much of coach education, at speed (memory). */
  WHOLE_FOOT("Whole foot lands at once, ankle set", "not the whole foot", "whole foot, ankle set", Sources.WHOLE_FOOT),
  /** Words only: where approaches with different teaching stand side by side. */
  AS_TAUGHT("Foot meets the ground as taught", "foot not as taught", "by the approach", Sources.FAULTS);

  private final String lookFor;
  private final String wentWrong;
  private final String label;
  private final Source source;

  FootContact(String lookFor, String wentWrong, String label, Source source) {
    this.lookFor = lookFor;
    this.wentWrong = wentWrong;
    this.label = label;
    this.source = source;
  }

  /** What to look for, in a few words. */
  public String lookFor() {
    return lookFor;
  }

  /** What is ticked when it was not there, in two or three words. */
  public String wentWrong() {
    return wentWrong;
  }

  /** How it is called in a setting and an option. */
  public String label() {
    return label;
  }

  /** Where it comes from. */
  public Source source() {
    return source;
  }
}
