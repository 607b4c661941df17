package boundwright.web.clips;

import boundwright.clip.body.DeLeva;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.scan.Stills;
import boundwright.quantity.LengthUnit;
import boundwright.web.page.Figures;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Marks put on a frame of a clip.
 *
 * @param line the clip
 * @param unit the coach's unit
 * @param size of the film's own picture, in which points are told
 * @param still number of the film's frame that is shown
 * @param stills how many frames the film has, as far as known
 * @param kept whether the shown frame's picture is there
 * @param left frames, from 0, whose pictures were left when the film was dropped; empty while the film is kept
 * @param ground a line for each ground mark, blank ones last
 * @param pole its foot, with the height
 * @param poleTop its top
 * @param corners a line for each corner
 * @param fromSand whether distances count back from the sand
 * @param slowed as written
 * @param proposed slowing that the film's tag proposes, or 1
 * @param model of the centre of mass
 * @param refused why the marks were not taken, or empty
 * @param alike another clip whose marks may do for this one, or null
 * @param taken whether that clip's marks are in the form, not kept yet
 * @param camera where the camera looked
 * @param firstFrame number of the film's frame that is the camera's first, from 0
 * @param known what of the place may stand for a tape
 * @param cameraUnknown whether only the coach can tell if the camera stood
 * @param stood whether the coach said that it did
 */
public record ClipMarksView(
    ClipsView.Line line,
    LengthUnit unit,
    Stills.Full size,
    int still,
    int stills,
    boolean kept,
    List<Integer> left,
    List<Row> ground,
    Row pole,
    Row poleTop,
    List<Row> corners,
    boolean fromSand,
    String slowed,
    double proposed,
    DeLeva model,
    String refused,
    ClipsView.@Nullable Line alike,
    boolean taken,
    CameraPath camera,
    int firstFrame,
    List<Known> known,
    boolean cameraUnknown,
    boolean stood) {

  /**
   * Something of the place whose distance is known, so that it may stand for a tape.
   *
   * @param name as a coach calls it
   * @param back how far back from the near edge of the sand, as written
   */
  public record Known(String name, String back) {}

  /**
   * A point as written.
   *
   * @param x right [px]
   * @param y down [px]
   * @param along distance, or height of the pole
   * @param up height of a corner
   * @param frame in which it was put, of the film, from 1; empty for the frame that is shown
   */
  public record Row(String x, String y, String along, String up, String frame) {
    /** Nothing is written. */
    static final Row BLANK = new Row("", "", "", "", "");

    boolean blank() {
      return x.isEmpty() && y.isEmpty();
    }
  }

  /** What is kept. */
  public ClipRecord clip() {
    return line.clip();
  }

  /** Address of the picture. */
  public String picture() {
    return ClipStage.still(clip(), String.valueOf(still));
  }

  /** Addresses of all pictures, N for the film's frame from 0. */
  public String pictures() {
    return ClipStage.still(clip(), "N");
  }

  /** Whether the camera turned, so that a mark belongs to its frame. */
  public boolean turned() {
    return camera.carries();
  }

  /** What the camera did and what lengths are good for, or empty where it stood. */
  public String cameraText() {
    return camera.remark().orElseGet(
        () -> turned() ? String.format(Locale.ROOT, "The camera turned by %.0f degrees and was followed.", camera.turned_deg()) : "");
  }

  /** The maps from each frame to the common picture for the page's script, numbers of a frame by commas, frames by semicolons. */
  public String maps() {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < camera.frames(); i++) {
      double[] m = camera.map(i);
      out.append(i == 0 ? "" : ";");
      for (int k = 0; k < m.length; k++) {
        out.append(k == 0 ? "" : ",").append(String.format(Locale.ROOT, "%.6g", m[k]));
      }
    }
    return out.toString();
  }

  /** {@link #left} for the page's script. */
  public String leftText() {
    return left.stream().map(String::valueOf).collect(Collectors.joining(","));
  }

  /** Address of this page at another frame of the film, from 1. */
  public String at(int frame) {
    return line.address() + "/marks?frame=" + Math.max(1, Math.min(stills, frame));
  }

  /** The models to choose from. */
  public List<DeLeva> models() {
    return List.of(DeLeva.values());
  }

  /** Whether corners were marked. */
  public boolean hasCorners() {
    return corners.stream().anyMatch(c -> !c.blank());
  }

  /** Whether a pole was marked. */
  public boolean hasPole() {
    return !pole.blank() || !poleTop.blank();
  }

  /** The proposed slowing without decimals it does not have. */
  public String proposedText() {
    return Figures.whole3(proposed);
  }

  /**
   * A frame on which a box is drawn.
   *
   * @param line the clip
   * @param size of the film's own picture
   * @param still number of the film's frame
   * @param box what is written: left edge, top edge, width, height
   * @param refused why it was not taken, or empty
   */
  public record BoxView(ClipsView.Line line, Stills.Full size, int still, List<String> box, String refused) {
    /** Address of the picture. */
    public String picture() {
      return ClipStage.still(line.clip(), String.valueOf(still));
    }

    /** Address of this page at another frame, from 1. */
    public String at(int frame) {
      return line.address() + "/box?frame=" + Math.max(1, frame);
    }
  }
}
