package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.athlete.Facility;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.athlete.growth.FastGrowth;
import boundwright.flight.FlightModel;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.Band;
import boundwright.load.Finding;
import boundwright.load.GuardLimits;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.LegCare;
import boundwright.load.Season;
import boundwright.load.account.ContactTimes.Timed;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.LoadScale;
import boundwright.load.account.OtherWork;
import boundwright.load.account.VerticalSpeeds;
import boundwright.load.account.Work;
import boundwright.load.back.LegBack;
import boundwright.load.back.Stages;
import boundwright.phone.Parcel.Kept;
import boundwright.phone.Parcel.Part;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkSettings;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads what {@link ParcelText} wrote. */
final class ParcelReader {
  /** Longest text that is taken [characters]. */
  private static final int MOST = 20_000_000;
  /** What an override of today was for is not handed out: the phone need only know that there is one. */
  private static final String REASON = "kept on the server";

  private final List<Fields> lines = new ArrayList<>();
  private int at;

  private ParcelReader(String text, String kind) {
    if (text.length() > MOST) {
      throw broken("it has " + text.length() + " characters, and at most " + MOST + " are taken");
    }
    int end = text.lastIndexOf("is=end&");
    if (!text.startsWith("is=" + ParcelText.FIRST + "&") || end < 0) {
      throw broken(text.isBlank() ? "it is empty" : "it does not begin and end as this program writes it");
    }
    Fields last = Fields.read("page", text.substring(end));
    String body = text.substring(0, end);
    for (String line : body.split("\n", -1)) {
      if (!line.isEmpty()) {
        lines.add(Fields.read("page", line));
      }
      if (lines.size() == 1 && !lines.get(0).text("v").equals(String.valueOf(ParcelText.VERSION))) {
        throw broken("it is of version " + lines.get(0).text("v") + ", and this program reads version " + ParcelText.VERSION);
      }
    }
    if (last.whole("lines", 0, MOST) != lines.size() || !last.text("sum").equals(CheckSum.of(body))) {
      throw broken("it was cut or changed on its way");
    }
    if (!lines.get(0).text("kind").equals(kind)) {
      throw broken("it is a " + lines.get(0).text("kind") + ", and a " + kind + " was expected");
    }
    at = 1;
  }

  static RefusedException broken(String why) {
    return new Fields("page").broken(why);
  }

  static Parcel parcel(String text) {
    return told(() -> new ParcelReader(text, "day").parcel());
  }

  /** One part, or several of {@link Part#text} one after another. */
  static List<Part> parts(String text) {
    return told(
        () -> {
          List<Part> out = new ArrayList<>();
          String rest = text;
          do {
            int next = rest.indexOf("\nis=" + ParcelText.FIRST + "&");
            out.addAll(new ParcelReader(next < 0 ? rest : rest.substring(0, next + 1), "part").rest());
            rest = next < 0 ? "" : rest.substring(next + 1);
          } while (!rest.isBlank());
          return out;
        });
  }

  private interface Reading<T> {
    T read();
  }

  /** Numbers and days of another form than ours are refused in our words too. */
  private static <T> T told(Reading<T> reading) {
    try {
      return reading.read();
    } catch (DateTimeException | IllegalArgumentException | IndexOutOfBoundsException e) {
      throw new RefusedException(String.valueOf(broken("a value makes no sense").getMessage()), e);
    }
  }

  private @Nullable Fields next(String is) {
    return at < lines.size() && lines.get(at).text("is").equals(is) ? lines.get(at++) : null;
  }

  private Fields must(String is) {
    Fields f = next(is);
    if (f == null) {
      throw broken("'" + is + "' is missing");
    }
    return f;
  }

  /** By hand: the library's parser would bring all its forms of dates into the browser. */
  private static LocalDate date(Fields f, String key) {
    String t = f.text(key);
    if (!t.matches("\\d{4}-\\d{2}-\\d{2}")) {
      throw f.broken("'" + key + "' is no day: '" + t + "'");
    }
    return LocalDate.of(Integer.parseInt(t.substring(0, 4)), Integer.parseInt(t.substring(5, 7)), Integer.parseInt(t.substring(8)));
  }

  private static @Nullable LocalDate dateOrNull(Fields f, String key) {
    return f.has(key) ? date(f, key) : null;
  }

  private static int count(Fields f, String key) {
    return (int) f.whole(key, 0, 1_000_000);
  }

  private Parcel parcel() {
    Fields d = must("day");
    Fields p = must("place");
    Facility place =
        new Facility(p.text("name"), p.real("runway"), p.real("pit"), p.real("flat"), p.one("surface", Surface.values()));
    CoachSettings settings =
        new CoachSettings(
            d.one("unit", LengthUnit.values()), new MarkSettings(d.real("chance"), d.real("sand"), d.real("clear")), place, count(d, "set"));
    GuardSettings guard = guard();
    List<Drill> drills = new ArrayList<>();
    for (Fields f = next("drill"); f != null; f = next("drill")) {
      drills.add(
          new Drill(
              Sequence.parse(f.text("sequence")), f.has("steps") ? (Integer) count(f, "steps") : null, count(f, "sets"), count(f, "reps"),
              f.yes("sand")));
    }
    return new Parcel(
        date(d, "date"),
        ZoneOffset.ofTotalSeconds((int) d.whole("zone", -64_800, 64_800)),
        Instant.ofEpochMilli(d.whole("made", 0, 1L << 52)),
        settings,
        guard,
        new DayPlan(d.text("title"), drills),
        rest());
  }

  private GuardSettings guard() {
    Fields g = must("guard");
    Map<Season, Map<Level, Band>> session = new EnumMap<>(Season.class);
    for (Fields f = next("session"); f != null; f = next("session")) {
      session.computeIfAbsent(f.one("season", Season.values()), s -> new EnumMap<>(Level.class))
          .put(f.one("level", Level.values()), band(f, "band"));
    }
    Fields s = must("scale");
    GuardLimits limits =
        new GuardLimits(
            session, band(g, "growing"), count(g, "growingWeeks"), count(g, "growingSessions"), count(g, "growingStep"),
            count(g, "growingStepWeeks"), band(g, "spacing"), count(g, "hardContacts"), count(g, "hardSteps"), band(g, "own"),
            count(g, "startWeek"), count(g, "seriesSteps"), count(g, "seriesContacts"), count(g, "seriesRefused"), band(g, "pain"));
    ContactTimes times = new ContactTimes(s.real("standing"), s.real("full"), s.reals("factor"));
    return new GuardSettings(limits, new LoadScale(s.real("power"), times, s.real("sets"), s.real("sport")));
  }

  private static Band band(Fields f, String key) {
    List<Double> two = f.reals(key);
    return new Band(two.get(0), two.get(1));
  }

  private List<Part> rest() {
    List<Part> out = new ArrayList<>();
    while (at < lines.size()) {
      out.add(part(must("athlete")));
    }
    return out;
  }

  private static FlightModel model(Fields a, String key, Athlete athlete) {
    return FlightModel.fromBytes(Base64.getDecoder().decode(a.text(key).replace('-', '+').replace('_', '/')))
        .orElseThrow(() -> broken("what was learned of " + athlete.name() + " is of another version of this program"));
  }

  private Part part(Fields a) {
    Athlete athlete =
        new Athlete(
            a.whole("id", 1, Long.MAX_VALUE), a.text("name"), a.one("level", Level.values()), a.one("foot", Foot.values()), count(a, "rung"));
    FlightModel before = a.has("before") ? model(a, "before", athlete) : null;
    FlightModel base = model(a, "base", athlete);
    List<Integer> steps = new ArrayList<>();
    for (String s : a.words("steps")) {
      steps.add(Athlete.checkSteps(Integer.parseInt(s)));
    }
    List<KnownMark> marks = new ArrayList<>();
    for (Fields f = next("mark"); f != null; f = next("mark")) {
      marks.add(
          new KnownMark(0, f.one("kind", KnownMark.Kind.values()), count(f, "steps"), f.real("distance"), date(f, "date"), f.yes("both")));
    }
    List<MeasuredRunUp> runUps = new ArrayList<>();
    for (Fields f = next("runup"); f != null; f = next("runup")) {
      runUps.add(new MeasuredRunUp(0, count(f, "steps"), f.real("length"), f.realOrNull("speed"), date(f, "date")));
    }
    List<Kept> reps = new ArrayList<>();
    for (Fields f = next("rep"); f != null; f = next("rep")) {
      reps.add(new Kept(rep(f, athlete.id()), f.has("token") ? f.text("token") : null));
    }
    List<String> gone = new ArrayList<>();
    for (Fields f = next("gone"); f != null; f = next("gone")) {
      gone.add(f.text("token"));
    }
    Season season = a.has("season") ? a.one("season", Season.values()) : null;
    LegCare care = care(a);
    History history = history(a, athlete.id());
    Fields today = next("today");
    DayLoad other = today == null ? new DayLoad(LocalDate.ofEpochDay(0), List.of()) : dayLoad(today, athlete.id());
    List<Timed> timed = new ArrayList<>();
    Fields t = next("timed");
    for (String one : t == null ? new String[0] : t.text("all").split("\\|")) {
      String[] two = one.split(":", -1);
      timed.add(new Timed(Athlete.checkSteps(Integer.parseInt(two[0])), Double.parseDouble(two[1])));
    }
    List<GuardOverride> overrides = new ArrayList<>();
    for (Fields f = next("override"); f != null; f = next("override")) {
      overrides.add(
          new GuardOverride(
              0, athlete.id(), LocalDate.ofEpochDay(0), f.one("rule", Finding.Rule.values()), f.one("answer", Answer.values()), "", REASON));
    }
    return new Part(new Profile(athlete, marks, runUps), steps, before, base, reps, gone, care, history, other, season, timed, overrides);
  }

  private static Rep rep(Fields f, long athlete) {
    return new Rep(
        f.whole("id", 1, Long.MAX_VALUE), athlete, date(f, "date"), Sequence.parse(f.text("sequence")), count(f, "steps"),
        f.one("surface", Surface.values()), f.reals("prints"), f.realOrNull("landing"),
        f.has("outcome") ? f.one("outcome", Outcome.values()) : null, f.has("after") ? (Integer) count(f, "after") : null,
        f.realOrNull("mark"), f.yes("looked"), f.words("faults"));
  }

  private LegCare care(Fields a) {
    Fields grows = next("fast");
    FastGrowth fast =
        grows == null
            ? null
            : new FastGrowth(
                grows.yes("now"), date(grows, "until"), grows.real("speed"), grows.real("low"), grows.real("high"), date(grows, "measured"), grows.real("limit"));
    List<Pain> pains = new ArrayList<>();
    for (Fields f = next("pain"); f != null; f = next("pain")) {
      pains.add(
          new Pain(0, date(f, "date"), f.text("area"), count(f, "level"), f.has("settled") ? (Boolean) f.yes("settled") : null, f.yes("refer")));
    }
    List<MedicalHold> holds = new ArrayList<>();
    for (Fields f = next("hold"); f != null; f = next("hold")) {
      LocalDate cleared = dateOrNull(f, "cleared");
      holds.add(new MedicalHold(0, date(f, "from"), "", cleared == null ? null : Parcel.CLINICIAN, cleared));
    }
    List<LegBack> backs = new ArrayList<>();
    for (Fields f = next("back"); f != null; f = next("back")) {
      backs.add(
          new LegBack(
              f.one("leg", Foot.values()), date(f, "begun"), dateOrNull(f, "until"), new Stages(f.real("start"), f.real("growth")), f.real("former"), count(f, "stage"),
              date(f, "since"), date(f, "known"), null));
    }
    return new LegCare(a.yes("growing"), dateOrNull(a, "began"), pains, holds, backs, fast);
  }

  private History history(Fields a, long athlete) {
    Fields w = next("week");
    LastWeek week = w == null ? null : new LastWeek(date(w, "said"), count(w, "contacts"));
    List<DayLoad> days = new ArrayList<>();
    for (Fields f = next("past"); f != null; f = next("past")) {
      days.add(dayLoad(f, athlete));
    }
    return new History(days, dateOrNull(a, "first"), week);
  }

  private static DayLoad dayLoad(Fields f, long athlete) {
    LocalDate date = date(f, "date");
    List<Work> work = new ArrayList<>();
    for (String item : f.has("work") ? f.text("work").split("\\|") : new String[0]) {
      String[] w = item.split(":", -1);
      List<VerticalSpeeds> speeds = new ArrayList<>();
      for (String s : w[5].isEmpty() ? new String[0] : w[5].split("~")) {
        String[] two = s.split(",", -1);
        speeds.add(new VerticalSpeeds(Double.parseDouble(two[0]), Double.parseDouble(two[1])));
      }
      work.add(
          new Work(
              Sequence.parse(w[0]), Integer.parseInt(w[1]), Integer.parseInt(w[2]), named(f, Surface.values(), w[3]),
              named(f, Work.Kind.values(), w[4]), speeds));
    }
    List<OtherWork> other = new ArrayList<>();
    for (String item : f.has("other") ? f.text("other").split("\\|") : new String[0]) {
      String[] o = item.split(":", -1);
      other.add(new OtherWork(0, athlete, date, named(f, OtherWork.Kind.values(), o[0]), Double.parseDouble(o[1]), Double.parseDouble(o[2])));
    }
    return new DayLoad(date, work, other);
  }

  private static <E extends Enum<E>> E named(Fields in, E[] all, String name) {
    for (E e : all) {
      if (e.name().equals(name)) {
        return e;
      }
    }
    throw in.broken("'" + name + "' is not known");
  }
}
