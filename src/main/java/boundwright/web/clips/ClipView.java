package boundwright.web.clips;

import boundwright.clip.desk.ClipRecord;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.LastTakeOff;
import boundwright.clip.reading.PointVerdict;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.reading.ReadFlight;
import boundwright.clip.reading.SequenceMatch;
import boundwright.flight.Rep;
import boundwright.footfall.Flight;
import boundwright.picture.BodyPicture;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.technique.FaultTick;
import boundwright.technique.FootContact;
import boundwright.technique.TeachingPoint;
import boundwright.web.page.Figures;
import boundwright.web.page.Ticks;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The page of a clip that was read.
 *
 * @param line state, progress and what can be done with the whole clip
 * @param unit the coach's unit
 * @param stage the chosen frame
 * @param columns the film strip
 * @param wide the runway for a desk, or null without lengths
 * @param narrow the same for a phone
 * @param rep what would be logged, or was; null where there is nothing to log
 * @param notLogged why there is nothing to log, or empty
 * @param others clips that it can be laid beside
 * @param refused why the last change was not taken, or empty
 * @param said what was just done, or empty
 * @param tag slowing that the film's tag proposes and that is not set; 1 if none
 * @param agreed whether the contacts were agreed to as they are
 */
public record ClipView(
    ClipsView.Line line,
    LengthUnit unit,
    ClipStage stage,
    List<Column> columns,
    @Nullable RunwayStrip wide,
    @Nullable RunwayStrip narrow,
    @Nullable Rep rep,
    String notLogged,
    List<ClipsView.Line> others,
    String refused,
    String said,
    double tag,
    boolean agreed) {

  /** What is kept. */
  public ClipRecord clip() {
    return line.clip();
  }

  /** The clip as it reads now. */
  public ClipReading reading() {
    return stage.reading();
  }

  /** Where the take-off into the landing can be entered as a long jump, its figures filled in; empty where it cannot be told. */
  public String longJump() {
    return reading().lastTakeOff().map(t -> "/athlete/" + clip().athleteId() + "/long-jump?" + query(t)).orElse("");
  }

  private String query(LastTakeOff t) {
    Double in = t.speedIn_ms();
    Estimate foot = t.touchdown_m();
    return String.format(Locale.ROOT, "foot=%s&forward=%.2f&up=%.2f", t.foot().name(), t.speed_ms(), t.upSpeed_ms())
        + "&high=" + written(Figures.bare(unit, t.height_m())) + "&low=" + written(Figures.bare(unit, t.landingHeight_m()))
        + (t.ahead_m() < 0 ? "" : "&ahead=" + written(unit.writeSmall(t.ahead_m())))
        + (in == null ? "" : String.format(Locale.ROOT, "&into=%.2f", in))
        + (foot == null || foot.p50() < 0 ? "" : "&touchdown=" + written(unit.writeSmall(foot.p50())));
  }

  private static String written(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** The sequence as seen, or empty. */
  public String seen() {
    SequenceMatch m = reading().match();
    return m == null ? "" : m.sequence().letters();
  }

  /** Verdicts that can be ticked: faults first, then those that are not certain. */
  public List<PointVerdict> ticks() {
    List<PointVerdict> out = new ArrayList<>();
    for (PointVerdict.Finding f : List.of(PointVerdict.Finding.FAULT, PointVerdict.Finding.UNSURE)) {
      reading().verdicts().stream().filter(v -> v.finding() == f).forEach(out::add);
    }
    return List.copyOf(out);
  }

  /** Lengths of the rep's flights as they would be logged. */
  public String lengths(Rep r) {
    List<String> out = new ArrayList<>();
    for (int k = 0; k < r.footprints_m().size(); k++) {
      out.add("contact " + (k + 2) + " at " + unit.write(r.footprints_m().get(k)));
    }
    Double landing = r.landing_m();
    if (landing != null) {
      out.add("landing at " + unit.write(landing));
    }
    return String.join(", ", out);
  }

  /** Address of a picture of the film strip. */
  public String still(BodyPicture picture) {
    return ClipStage.still(clip(), picture);
  }

  /** The faults of a rep in words. */
  public String words(Rep r) {
    List<String> out = new ArrayList<>();
    FootContact taught = reading().verdicts().stream().map(PointVerdict::taught).findFirst().orElse(FootContact.HEEL_ROLLS);
    for (FaultTick t : Ticks.kept(r).orElse(List.of())) {
      String what = TeachingPoint.byKey(t.key()).map(p -> p.wentWrong(taught)).orElse(t.key());
      out.add(what + (t.contact() == null ? "" : " on contact " + t.contact()));
    }
    return String.join(", ", out);
  }

  /** The slowing that the tag proposes, without decimals it does not have. */
  public String tagText() {
    return Figures.whole3(tag);
  }

  /**
   * A contact of the film strip.
   *
   * @param index among all contacts, from 0
   * @param name of the contact
   * @param contact what was read
   * @param frame of its touchdown, from 1
   * @param before just before touchdown
   * @param touchdown at it
   * @param toeOff as the foot leaves
   * @param kept which of the three pictures are there
   * @param after the flight after it, or null for the last
   * @param kind what the flight is called
   * @param verdicts the teaching points at it
   */
  public record Column(
      int index,
      String name,
      ReadContact contact,
      int frame,
      BodyPicture before,
      BodyPicture touchdown,
      BodyPicture toeOff,
      List<Boolean> kept,
      @Nullable ReadFlight after,
      String kind,
      List<PointVerdict> verdicts) {

    /** Touchdown. */
    public String down() {
      return ClipStage.instant(contact.contact().touchdown_s());
    }

    /** Toe-off. */
    public String up() {
      return ClipStage.instant(contact.contact().toeOff_s());
    }

    /** Time on the ground with its error. */
    public String ground() {
      return ClipStage.length(contact.contact().duration_s());
    }

    /** Length of the flight after it with its error, or empty. */
    public String flight(LengthUnit unit) {
      ReadFlight f = after;
      Estimate length = f == null ? null : f.length_m();
      return length == null ? "" : unit.write(length);
    }

    /** Time of the flight after it in words, or empty. */
    public String air() {
      ReadFlight f = after;
      Estimate time = f == null ? null : f.time_s();
      return time == null ? "" : time.p50() > 0 ? ClipStage.seconds(time.p50()) + " in the air" : "no time in the air";
    }

    /** What was wrong, in a few words each. */
    public List<String> faults() {
      return verdicts.stream().filter(v -> v.finding() == PointVerdict.Finding.FAULT).map(PointVerdict::wentWrong).toList();
    }

    /** What may have been wrong. */
    public List<String> doubts() {
      return verdicts.stream().filter(v -> v.finding() == PointVerdict.Finding.UNSURE).map(PointVerdict::wentWrong).toList();
    }
  }

  /** Name of the flight after a contact: a step of the run-up, or the flight's kind; {@code then} beyond the sequence. */
  static String kind(ClipReading reading, int contact) {
    int n = reading.number(contact);
    SequenceMatch m = reading.match();
    if (n == 0 || m == null) {
      return reading.isAfter(contact) ? "then" : "step";
    }
    List<Flight> flights = m.sequence().flights();
    return n <= flights.size() ? flights.get(n - 1).kind().label() : "";
  }
}
