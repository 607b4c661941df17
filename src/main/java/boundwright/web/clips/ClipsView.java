package boundwright.web.clips;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.quantity.LengthUnit;
import boundwright.runway.Drill;
import boundwright.web.page.Figures;
import boundwright.web.page.Sent;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The clips and the form that takes new ones.
 *
 * @param lines newest first
 * @param athletes to choose from
 * @param only the athlete whose clips alone are listed, or null for all
 * @param drills of the card
 * @param unit the coach's unit
 * @param surface the usual surface
 * @param today the day
 * @param sent a refused form, or nothing
 * @param said what was just done, or empty
 * @param mustAsk whether of somebody who may be chosen it is not recorded that they may be filmed
 * @param putRight how many of the clips were put right by hand and agreed to
 */
public record ClipsView(
    List<Line> lines,
    List<Athlete> athletes,
    @Nullable Athlete only,
    List<Drill> drills,
    LengthUnit unit,
    Surface surface,
    LocalDate today,
    Sent sent,
    String said,
    boolean mustAsk,
    int putRight) {

  /** The address of the list. */
  public String address() {
    return only == null ? "/clips" : "/clips?athlete=" + only.id();
  }

  /** The surfaces to choose from. */
  public List<Surface> surfaces() {
    return List.of(Surface.values());
  }

  /**
   * One clip of the list.
   *
   * @param clip what is kept
   * @param athlete whose name
   * @param today the day
   * @param list the address of the list it stands in, where it goes after a change
   * @param alone whether it stands on the clip's own page
   * @param pictures whether a picture is kept on which a box can be drawn
   */
  public record Line(ClipRecord clip, String athlete, LocalDate today, String list, boolean alone, boolean pictures) {
    /** The clip's page. */
    public String address() {
      return "/clips/" + clip.id();
    }

    /** Whether it waits or is being read, so that the line asks again by itself. */
    public boolean working() {
      return clip.state() == ClipState.WAITING || clip.state() == ClipState.READING;
    }

    /** When the line asks again, as htmx writes it. */
    public String again() {
      return clip.state() == ClipState.READING ? "every 1s" : "every 3s";
    }

    /** Where the line asks. */
    public String row() {
      return address() + "/row?list=" + (list.contains("=") ? list.substring(list.indexOf('=') + 1) : "") + (alone ? "&alone=1" : "");
    }

    /** How much of the film was read. */
    public String share() {
      return Figures.percent(clip.perMille() / 1000.0);
    }

    /** What was asked: {@code RRL x2 from 4 steps, track}. */
    public String drill() {
      return Figures.fromSteps(clip.approachSteps()) + ", " + clip.surface().label();
    }

    /** Sequence asked, or that it is to be recognised. */
    public String sequence() {
      return clip.sequence() == null ? "as seen" : clip.sequence().text();
    }

    /** Whether the clip may be read again. */
    public boolean canRetry() {
      return clip.state().canRetry() && clip.filmKept();
    }

    /** Whether a box can be drawn and the clip read again with it. */
    public boolean canBox() {
      return canRetry() && pictures;
    }

    /** Why it was refused, or empty. */
    public String trouble() {
      String t = clip.trouble();
      return t == null ? "" : t;
    }
  }

  /**
   * A clip that cannot be shown yet.
   *
   * @param line state and progress
   * @param refused why it cannot be read although its body points are there, or empty
   */
  public record Wait(Line line, String refused) {}
}
