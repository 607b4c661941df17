package boundwright.store.season;

import boundwright.athlete.Surface;
import boundwright.load.GuardSettings;
import boundwright.quantity.RefusedException;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.Period;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRules;
import boundwright.season.Span;
import boundwright.season.Venue;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The file of a season, see {@code docs/season-file.md}: what is planned from, one object of JSON in UTF-8. */
public final class SeasonFile {
  /** What a season's file says it is. */
  public static final String KIND = "boundwright season";

  static final int LONGEST_KEY = 40;
  private static final int LONGEST_NAME = 80;
  private static final Pattern HOURS = Pattern.compile("(\\d{2}:\\d{2}(?::\\d{2})?)\\s*-\\s*(\\d{2}:\\d{2}(?::\\d{2})?)");

  private SeasonFile() {}

  /** Which number an athlete has. */
  @FunctionalInterface
  public interface Numbers {
    /**
     * The number of an athlete.
     *
     * @param name as in the file
     * @param written the number in the file, or the place in the squad
     * @throws RefusedException if the athlete is not known
     */
    long of(String name, long written);

    /** Those of the file. */
    Numbers AS_WRITTEN = (name, written) -> written;
  }

  /**
   * The season in the bytes of a file, athletes numbered as it says.
   *
   * @param facility limits and scale of the load account where the file says nothing of them
   * @throws RefusedException with the place in the file, the value, what is allowed and a way out
   */
  public static SeasonInput read(byte[] bytes, GuardSettings facility) {
    return read(SeasonJson.text(bytes), facility, Numbers.AS_WRITTEN);
  }

  /** As {@link #read(byte[], GuardSettings)}, athletes numbered otherwise. */
  public static SeasonInput read(byte[] bytes, GuardSettings facility, Numbers numbers) {
    return read(SeasonJson.text(bytes), facility, numbers);
  }

  static SeasonInput read(ObjectNode tree, GuardSettings facility) {
    return read(SeasonJson.root(tree, KIND), facility, Numbers.AS_WRITTEN);
  }

  private static SeasonInput read(String text, GuardSettings facility, Numbers numbers) {
    return read(SeasonJson.root(text, KIND), facility, numbers);
  }

  private static SeasonInput read(Place root, GuardSettings facility, Numbers numbers) {
    root.textOrNull("note", 400);
    List<Place> athletes = root.objects("squad");
    if (athletes.size() > SeasonInput.MOST_ATHLETES) {
      throw root.wrong("squad", athletes.size() + " athletes are out of range: 1 to " + SeasonInput.MOST_ATHLETES + ". Plan a larger squad as two seasons.");
    }
    List<Member> squad = new ArrayList<>();
    for (Place p : athletes) {
      squad.add(MemberJson.read(p, squad.size() + 1, numbers));
    }
    return season(root, squad, facility);
  }

  /**
   * What a season has outside the squad.
   *
   * @param meets in it
   * @param venues where one can train
   */
  public record Outside(List<Meet> meets, List<Venue> venues) {
    /** Takes copies. */
    public Outside {
      meets = List.copyOf(meets);
      venues = List.copyOf(venues);
    }
  }

  /** Meets and places of what {@link #frame} wrote. */
  public static Outside outside(String frame) {
    return outside(SeasonJson.root(frame, KIND));
  }

  private static SeasonInput season(Place root, List<Member> squad, GuardSettings facility) {
    String name = root.text("name", 60);
    LocalDate first = root.date("first");
    LocalDate last = root.date("last");
    List<Period> periods = new ArrayList<>();
    for (Place p : root.objects("periods")) {
      LocalDate from = p.date("from");
      periods.add(new Period(p.choice("part", List.of(Period.Kind.values()), Period.Kind::label), from));
      p.done();
    }
    Outside outside = outside(root);
    SeasonRules rules = RulesJson.read(root.object("rules"), facility);
    root.done();
    return new SeasonInput(name, first, last, periods, outside.meets(), outside.venues(), squad, rules);
  }

  private static Outside outside(Place root) {
    List<Meet> meets = new ArrayList<>();
    for (Place p : root.objects("meets")) {
      meets.add(new Meet(p.text("key", LONGEST_KEY), p.text("name", LONGEST_NAME), p.date("date")));
      p.done();
    }
    List<Venue> places = new ArrayList<>();
    for (Place p : root.objects("places")) {
      places.add(venue(p));
    }
    return new Outside(meets, places);
  }

  /**
   * A season as a file, in lines.
   *
   * @param note what the file says of itself, or empty; it is passed over when it is read
   * @param facility limits and scale of the load account; only what differs from them is written
   */
  public static String write(SeasonInput season, GuardSettings facility, String note) {
    ObjectNode root = SeasonJson.begin(KIND);
    if (!note.isEmpty()) {
      root.put("note", note);
    }
    fill(root, season, facility);
    return SeasonJson.lines(root);
  }

  /** A season as a file, to be changed. */
  static ObjectNode tree(SeasonInput season, GuardSettings facility) {
    ObjectNode root = SeasonJson.begin(KIND);
    fill(root, season, facility);
    return root;
  }

  private static void fill(ObjectNode root, SeasonInput season, GuardSettings facility) {
    frame(root, season, facility);
    ArrayNode squad = root.putArray("squad");
    season.squad().forEach(m -> MemberJson.write(squad.addObject(), m));
  }

  /** A season without its athletes, in one line: as it is kept beside them. */
  public static String frame(SeasonInput season, GuardSettings facility) {
    ObjectNode root = SeasonJson.begin(KIND);
    frame(root, season, facility);
    return SeasonJson.line(root);
  }

  /** An athlete of a season, in one line. */
  public static String member(Member member) {
    ObjectNode node = SeasonJson.object();
    MemberJson.write(node, member);
    return SeasonJson.line(node);
  }

  /** An athlete of what {@link #member} wrote, with its number. */
  public static Member readMember(String member) {
    return MemberJson.read(SeasonJson.object(member), 1, Numbers.AS_WRITTEN);
  }

  /** A season of what {@link #frame} wrote, with these athletes. */
  public static SeasonInput read(String frame, List<Member> squad, GuardSettings facility) {
    return season(SeasonJson.root(frame, KIND), squad, facility);
  }

  private static void frame(ObjectNode root, SeasonInput season, GuardSettings facility) {
    root.put("name", season.name()).put("first", season.first().toString()).put("last", season.last().toString());
    ArrayNode periods = root.putArray("periods");
    season.periods().forEach(p -> periods.addObject().put("from", p.from().toString()).put("part", p.kind().label()));
    ArrayNode meets = root.putArray("meets");
    season.meets().forEach(m -> meets.addObject().put("key", m.key()).put("name", m.name()).put("date", m.date().toString()));
    ArrayNode places = root.putArray("places");
    season.venues().forEach(v -> write(places.addObject(), v));
    RulesJson.write(root.putObject("rules"), season.rules(), facility);
  }

  private static void write(ObjectNode to, Venue v) {
    to.put("key", v.key()).put("name", v.name()).put("surface", v.surface().label()).put("sand", v.sand()).put("athletesAtOnce", v.athletes());
    ObjectNode hours = to.putObject("hours");
    v.hours().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(e -> hours.put(MemberJson.label(e.getKey()), e.getValue().from() + "-" + e.getValue().to()));
    if (!v.closed().isEmpty()) {
      ArrayNode closed = to.putArray("closed");
      v.closed().forEach(s -> MemberJson.span(closed.addObject(), s));
    }
  }

  private static Venue venue(Place at) {
    String key = at.text("key", LONGEST_KEY);
    String name = at.text("name", LONGEST_NAME);
    Surface surface = at.choice("surface", List.of(Surface.values()), Surface::label);
    boolean sand = at.flag("sand", false);
    int most = at.whole("athletesAtOnce", 1, 400);
    Map<DayOfWeek, Venue.Hours> hours = new EnumMap<>(DayOfWeek.class);
    Place days = at.object("hours");
    if (days != null) {
      for (DayOfWeek day : DayOfWeek.values()) {
        String label = MemberJson.label(day);
        String written = days.textOrNull(label, 20);
        if (written != null) {
          hours.put(day, hours(days, label, written));
        }
      }
      days.done();
    }
    List<Span> closed = new ArrayList<>();
    for (Place p : at.objects("closed")) {
      closed.add(MemberJson.span(p));
      p.done();
    }
    at.done();
    return at.make(() -> new Venue(key, name, surface, sand, most, hours, closed));
  }

  private static Venue.Hours hours(Place at, String key, String written) {
    Matcher m = HOURS.matcher(written);
    if (m.matches()) {
      try {
        LocalTime from = LocalTime.parse(m.group(1));
        LocalTime to = LocalTime.parse(m.group(2));
        return at.make(key, () -> new Venue.Hours(from, to));
      } catch (DateTimeParseException e) {
        throw at.wrong(key, "'" + written + "' has a time that no clock shows. Write 00:00 to 23:59, as in 17:00-19:30.");
      }
    }
    throw at.wrong(key, "'" + written + "' are no hours. Write them as 17:00-19:30.");
  }
}
