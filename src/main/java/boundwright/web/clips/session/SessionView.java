package boundwright.web.clips.session;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Standing;
import boundwright.clip.day.SessionDesk;
import boundwright.clip.day.SessionFilm;
import boundwright.clip.day.SessionSheet;
import boundwright.clip.day.SessionSheet.Maybe;
import boundwright.clip.desk.ClipState;
import boundwright.flight.Rep;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.web.page.Figures;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A session's film on its page.
 *
 * @param sheet the film as it stands
 * @param athletes everybody, by name
 * @param consents what was said about filming them, by number
 * @param unit the coach's unit
 * @param today the day
 * @param now the moment
 * @param zone of the coach's clock
 * @param ask about whose filming is to be asked for which rep, or null
 * @param refused why the last thing was not done, or empty
 */
public record SessionView(
    SessionSheet sheet, List<Athlete> athletes, Map<Long, Standing> consents, LengthUnit unit, LocalDate today, Instant now, ZoneId zone,
    @Nullable Ask ask, String refused) {
  /** Below this a proposal is no more than the next one on the list (judgement). */
  private static final double WORTH_SAYING = 0.2;
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("H:mm", Locale.ROOT);

  /**
   * Somebody whose consent is missing.
   *
   * @param rep which was to be read
   * @param athlete of whom
   */
  public record Ask(long rep, Athlete athlete) {}

  /** A row with what it stands on. */
  public record Line(SessionView page, SessionSheet.Row row) {
    /** Its address. */
    public String address() {
      return "/clips/session/rep/" + row.rep().id();
    }

    /** {@code 0:03.4 to 0:05.3}. */
    public String when() {
      return row.rep().cut().said();
    }

    /** Who it was, or empty. */
    public String who() {
      Long id = row.rep().athleteId();
      return id == null ? "" : page.name(id);
    }

    /** {@code Ada, 87 %}; the name alone where hardly anything speaks for it. */
    public String maybe(Maybe m) {
      return page.name(m.athleteId()) + (m.sure() < WORTH_SAYING ? "" : ", " + Figures.odds(m.sure()));
    }

    /** Lengths as they would be logged. */
    public String lengths() {
      Rep r = row.seen();
      return r == null ? "" : page.lengths(r);
    }

    /** When the tap was made that may be this rep, or empty. */
    public String tapped() {
      SessionSheet.MaybeTap tap = row.tap();
      return tap == null ? "" : CLOCK.format(tap.tap().at().atZone(page.zone));
    }

    /** Whether its lengths are to be added to a tapped rep. */
    public boolean adds() {
      return row.rep().tapRepId() != 0;
    }
  }

  /** The film. */
  public SessionFilm film() {
    return sheet.film();
  }

  /** The film's page. */
  public String address() {
    return "/clips/session/" + film().id();
  }

  /** Rows that are reps. */
  public List<Line> lines() {
    return sheet.rows().stream().filter(r -> !r.rep().setAside()).map(r -> new Line(this, r)).toList();
  }

  /** Rows that were set aside. */
  public List<Line> aside() {
    return sheet.rows().stream().filter(r -> r.rep().setAside()).map(r -> new Line(this, r)).toList();
  }

  /** Whether the film waits or is being cut. */
  public boolean working() {
    return working(film());
  }

  static boolean working(SessionFilm film) {
    return film.state() == ClipState.WAITING || film.state() == ClipState.READING;
  }

  /** Whether cutting can go on. */
  public boolean canGoOn() {
    return (film().state() == ClipState.REFUSED || film().state() == ClipState.CANCELLED) && film().filmKept();
  }

  /** {@code 12 reps, 3 named, 2 logged}. */
  public String count() {
    List<Line> all = lines();
    long named = all.stream().filter(l -> l.row.rep().athleteId() != null).count();
    long logged = all.stream().filter(l -> l.row.logged()).count();
    return Notes.counted(all.size(), "rep") + (named == 0 ? "" : ", " + named + " named") + (logged == 0 ? "" : ", " + logged + " logged");
  }

  /** Share of the film that was cut. */
  public String share() {
    return Figures.percent(film().share());
  }

  /** How long it will still take, or empty. */
  public String remaining() {
    return film().remaining(now).map(SessionView::about).orElse("");
  }

  static String about(Duration d) {
    long s = d.toSeconds();
    return s < 90 ? "about " + Math.max(10, (s + 5) / 10 * 10) + " s left" : "about " + (s + 30) / 60 + " min left";
  }

  /** What it holds on the disk, and what is left. */
  public String storage() {
    return gigabytes(sheet.bytes()) + " here, " + gigabytes(sheet.freeBytes()) + " free on the disk";
  }

  static String gigabytes(long bytes) {
    return bytes < 1_000_000_000 ? String.format(Locale.ROOT, "%.0f MB", bytes / 1e6) : String.format(Locale.ROOT, "%.1f GB", bytes / 1e9);
  }

  /** How far the film's length is known: {@code 31:12}. */
  public String length() {
    return film().seconds() > 0 ? SessionDesk.at(film().seconds()) : "";
  }

  private String name(long id) {
    return athletes.stream().filter(a -> a.id() == id).map(Athlete::name).findFirst().orElse("athlete no longer kept");
  }

  private String lengths(Rep r) {
    List<String> out = new ArrayList<>();
    for (int k = 0; k < r.footprints_m().size(); k++) {
      if (!r.footprints_m().get(k).isNaN()) {
        out.add("contact " + (k + 2) + " at " + unit.write(r.footprints_m().get(k)));
      }
    }
    Double landing = r.landing_m();
    if (landing != null) {
      out.add("landing at " + unit.write(landing));
    }
    return String.join(", ", out);
  }

  /** What was said about filming somebody. */
  public String consent(Athlete a) {
    Standing c = consents.getOrDefault(a.id(), Standing.NOT_ASKED);
    LocalDate day = c.day();
    return c.kind().label() + (day == null ? "" : (c.kind() == Standing.Kind.YES || c.kind() == Standing.Kind.NO ? ", " : " ") + Figures.day(day, today));
  }
}
