package boundwright.cli;

import boundwright.clip.FoundClip;
import boundwright.clip.contact.Contact;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.PointVerdict;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.reading.ReadFlight;
import boundwright.clip.reading.SequenceMatch;
import boundwright.quantity.Estimate;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What {@code clip --json} prints; field by field in {@code docs/formats-json.md}. */
record ClipAnswer(
    Film film,
    int networkFrames,
    boolean lengths,
    String centreOfMass,
    @Nullable Found sequence,
    List<ContactAnswer> contacts,
    List<FlightAnswer> flights,
    List<PointAnswer> points,
    List<String> remarks) {

  /** The file. */
  record Film(String codec, int width, int height, int turned_deg, int frames, double seconds, @Nullable Double captureFps) {}

  /** The sequence among the contacts; {@code first} counts from 1. */
  record Found(String letters, int first, int wrongFeet, boolean complete, boolean sure) {}

  /** One contact. */
  record ContactAnswer(
      String foot,
      boolean bothFeet,
      double footSure,
      boolean fromHand,
      @Nullable Points touchdown_s,
      @Nullable Points toeOff_s,
      @Nullable Points contact_s,
      @Nullable Points toe_m,
      @Nullable Points touchdownDistance_m,
      @Nullable Double trunkLean_deg,
      @Nullable Double strike_deg,
      @Nullable String strike,
      @Nullable Double freeThigh_deg,
      @Nullable Double strikeFrom_m,
      @Nullable Double footSpeed_ms,
      @Nullable Double speedIn_ms,
      @Nullable Double speedOut_ms) {}

  /** One flight. */
  record FlightAnswer(
      @Nullable Points time_s,
      @Nullable Points length_m,
      @Nullable Double speed_ms,
      @Nullable Double upSpeed_ms,
      @Nullable Double fallen_ms2,
      @Nullable Double height_m,
      @Nullable Double landingHeight_m,
      @Nullable Double ahead_m) {}

  /** One teaching point at one contact. */
  record PointAnswer(String point, int contact, String finding, String sentence) {}

  static ClipAnswer of(FoundClip clip, ClipReading r) {
    FilmFacts f = clip.film();
    Film film =
        new Film(f.codec(), f.width(), f.height(), f.turnedDeg(), f.frames(), cut(f.seconds(), 6), Double.isNaN(f.captureFps()) ? null : f.captureFps());
    SequenceMatch m = r.match();
    return new ClipAnswer(
        film, clip.networkFrames(), r.scaled(), r.model(),
        m == null ? null : new Found(m.sequence().letters(), m.first() + 1, m.wrongFeet(), m.complete(), m.sure()),
        r.contacts().stream().map(c -> contact(c, r.scaled())).toList(), r.flights().stream().map(v -> flight(v, r.scaled())).toList(),
        r.verdicts().stream().map(ClipAnswer::point).toList(), r.remarks());
  }

  private static ContactAnswer contact(ReadContact r, boolean scaled) {
    Contact c = r.contact();
    return new ContactAnswer(
        String.valueOf(c.foot().letter()), c.bothFeet(), cut(c.footSure(), 3), r.fromHand(), points(c.touchdown_s()), points(c.toeOff_s()),
        points(c.duration_s()), scaled ? points(c.place_m()) : null, scaled ? points(r.touchdownDistance_m()) : null,
        number(r.trunkLeanDeg(), 1), number(r.strikeDeg(), 1), r.strike() == null ? null : r.strike().label(), number(r.thighDeg(), 0),
        scaled ? number(r.strikeFrom_m(), 3) : null, scaled ? number(r.groundSpeed_ms(), 2) : null,
        scaled ? number(r.speedIn_ms(), 2) : null, scaled ? number(r.speedOut_ms(), 2) : null);
  }

  private static FlightAnswer flight(ReadFlight f, boolean scaled) {
    return new FlightAnswer(
        points(f.time_s()), points(f.length_m()), scaled ? number(f.speed_ms(), 2) : null, scaled ? number(f.upSpeed_ms(), 2) : null,
        scaled ? number(f.fallen_ms2(), 2) : null, scaled ? number(f.height_m(), 3) : null, scaled ? number(f.landingHeight_m(), 3) : null,
        scaled ? number(f.ahead_m(), 3) : null);
  }

  private static PointAnswer point(PointVerdict v) {
    return new PointAnswer(v.point().key(), v.contact(), v.finding().name().toLowerCase(Locale.ROOT), v.sentence());
  }

  private static @Nullable Points points(@Nullable Estimate e) {
    return e == null || Double.isNaN(e.p50()) ? null : Points.of(e);
  }

  private static @Nullable Double number(double v, int digits) {
    return Double.isNaN(v) ? null : (Double) cut(v, digits);
  }

  private static double cut(double v, int digits) {
    double k = Math.pow(10, digits);
    return Math.rint(v * k) / k;
  }
}
