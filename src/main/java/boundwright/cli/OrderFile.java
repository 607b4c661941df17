package boundwright.cli;

import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.Window;
import boundwright.season.order.OrderAthlete;
import boundwright.season.order.OrderSettings;
import boundwright.season.order.OrderWords;
import boundwright.season.order.Place;
import boundwright.season.order.RestRule;
import boundwright.season.order.SessionAsk;
import boundwright.season.order.SessionDrill;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads a session from a file; the format stands in {@code docs/formats.md}. A name that is not known is refused, so that a slip is not passed over. */
final class OrderFile {
  private static final int MOST_BYTES = 1_000_000;
  private static final ObjectMapper JSON = new ObjectMapper();

  private OrderFile() {}

  /** What was read. */
  record Read(SessionAsk ask, @Nullable LocalTime begins) {}

  static Read read(Path file) {
    try {
      if (!Files.isRegularFile(file)) {
        throw new RefusedException("There is no file " + file + ". Name a session written as in docs/formats.md.");
      }
      if (Files.size(file) > MOST_BYTES) {
        throw new RefusedException("The file " + file + " has " + Files.size(file) + " bytes; the limit is " + MOST_BYTES + ". It is no session.");
      }
      return read(new At("", JSON.readTree(Files.readString(file))));
    } catch (JsonProcessingException e) {
      throw new RefusedException(
          "The file " + file + " is no JSON at line " + e.getLocation().getLineNr() + ": " + e.getOriginalMessage() + ". docs/formats.md shows a session.", e);
    } catch (IOException e) {
      throw new RefusedException("The file " + file + " cannot be read: " + e.getMessage() + ".", e);
    }
  }

  private static Read read(At at) {
    at.only("begins", "minutes", "coaches", "helpers", "places", "drills", "athletes", "seconds");
    List<SessionDrill> drills = new ArrayList<>();
    for (At d : at.at("drills").list()) {
      d.only("sequence", "sand", "sets", "reps", "watched", "warmUp");
      drills.add(
          new SessionDrill(
              Sequence.parse(d.at("sequence").text()), d.yes("sand", true), d.whole("sets", 1), d.whole("reps", 2), d.yes("watched", false),
              d.yes("warmUp", false)));
    }
    List<OrderAthlete> athletes = new ArrayList<>();
    for (At a : at.at("athletes").list()) {
      athletes.add(athlete(a, drills, athletes.size() + 1));
    }
    List<Place> places = new ArrayList<>();
    for (At p : at.at("places").list()) {
      p.only("name", "for", "lanes", "surface", "openMinutes");
      String use = Choices.choice("use of the place", p.at("for").text(), List.of("sand", "flat", "both"), s -> s);
      Surface surface = Choices.surface(p.at("surface").text());
      places.add(
          new Place(
              p.at("name").text(), !use.equals("flat"), !use.equals("sand"), p.whole("lanes", 1), surface,
              p.has("openMinutes") ? (Integer) p.at("openMinutes").whole() : null));
    }
    OrderSettings settings = settings(at);
    List<String> helpers = at.has("helpers") ? at.at("helpers").list().stream().map(At::text).toList() : List.of();
    String begins = at.has("begins") ? at.at("begins").text() : null;
    return new Read(
        new SessionAsk(
            athletes, drills, places, settings.coaches(), helpers, settings.minutes(), List.of(), LengthUnit.METRES, settings),
        begins == null ? null : OrderWords.time(begins));
  }

  private static OrderAthlete athlete(At a, List<SessionDrill> drills, long id) {
    a.only("name", "steps", "works", "done", "new");
    List<OrderAthlete.Part> parts = new ArrayList<>();
    for (int d = 0; d < drills.size(); d++) {
      At works = a.each("works", d, drills.size());
      Window window = null;
      if (works != null) {
        List<At> ends = works.list();
        if (ends.size() != 2) {
          throw works.broken("has " + ends.size() + " marks; it is the nearest and the farthest mark that works, in metres");
        }
        window = new Window(ends.get(0).number(), ends.get(1).number());
      }
      At steps = a.each("steps", d, drills.size());
      At done = a.each("done", d, drills.size());
      At fresh = a.each("new", d, drills.size());
      parts.add(
          new OrderAthlete.Part(
              steps == null ? 0 : steps.whole(), done == null ? 0 : done.whole(), drills.get(d).inSand() ? window : null, fresh != null && fresh.yes()));
    }
    return new OrderAthlete(id, a.at("name").text(), parts);
  }

  private static OrderSettings settings(At at) {
    OrderSettings d = OrderSettings.DEFAULT;
    At s = at.has("seconds") ? at.at("seconds") : new At("seconds", JSON.createObjectNode());
    s.only(
        "step", "contact", "clearSand", "clearFlat", "say", "restTimesWork", "restStanding", "restFour", "restEight", "restFull");
    RestRule r = d.rest();
    return new OrderSettings(
        d.pits(), d.lanes(), d.flatLanes(), d.flatSurface(), at.whole("coaches", d.coaches()), d.watch(), at.whole("minutes", d.minutes()),
        s.number("step", d.step_s()), s.number("contact", d.contact_s()), s.whole("clearSand", d.clearSand_s()),
        s.whole("clearFlat", d.clearFlat_s()), s.whole("say", d.say_s()),
        new RestRule(
            s.number("restTimesWork", r.timesWork()), s.whole("restStanding", r.standing_s()), s.whole("restFour", r.four_s()),
            s.whole("restEight", r.eight_s()), s.whole("restFull", r.full_s())));
  }

  /** A value with where it stands, so that a refusal can name it. */
  private record At(String path, JsonNode node) {
    RefusedException broken(String what) {
      return new RefusedException("In the session file, " + (path.isEmpty() ? "the whole" : path) + " " + what + ". docs/formats.md shows a session.");
    }

    void only(String... names) {
      if (!node.isObject()) {
        throw broken("is no object { }");
      }
      for (Iterator<String> i = node.fieldNames(); i.hasNext(); ) {
        String name = i.next();
        if (!Arrays.asList(names).contains(name)) {
          throw broken("has '" + name + "', which is not known; it is one of " + String.join(", ", names));
        }
      }
    }

    private String below(String name) {
      return path.isEmpty() ? name : path + "." + name;
    }

    boolean has(String name) {
      return node.hasNonNull(name);
    }

    At at(String name) {
      if (!has(name)) {
        throw broken("lacks '" + name + "'");
      }
      return new At(below(name), node.get(name));
    }

    List<At> list() {
      if (!node.isArray()) {
        throw broken("is no list [ ]");
      }
      List<At> out = new ArrayList<>();
      for (int i = 0; i < node.size(); i++) {
        out.add(new At(path + "[" + i + "]", node.get(i)));
      }
      return out;
    }

    /** Of a list with one entry for each drill, or of one value for all, that of a drill; null where there is none. */
    @Nullable At each(String name, int drill, int drills) {
      if (!has(name)) {
        return null;
      }
      At all = at(name);
      if (!all.node.isArray()) {
        return all;
      }
      if (all.node.size() != drills) {
        throw all.broken("has " + all.node.size() + " entries; there are " + drills + " drills, and each has one");
      }
      At one = all.list().get(drill);
      return one.node.isNull() ? null : one;
    }

    String text() {
      if (!node.isTextual()) {
        throw broken("is no text");
      }
      return node.asText();
    }

    int whole() {
      if (!node.isIntegralNumber() || !node.canConvertToInt()) {
        throw broken("is '" + node.asText() + "' and no whole number");
      }
      return node.asInt();
    }

    double number() {
      if (!node.isNumber()) {
        throw broken("is '" + node.asText() + "' and no number");
      }
      return node.asDouble();
    }

    boolean yes() {
      if (!node.isBoolean()) {
        throw broken("is '" + node.asText() + "'; it is true or false");
      }
      return node.asBoolean();
    }

    int whole(String name, int otherwise) {
      return has(name) ? at(name).whole() : otherwise;
    }

    double number(String name, double otherwise) {
      return has(name) ? at(name).number() : otherwise;
    }

    boolean yes(String name, boolean otherwise) {
      return has(name) ? at(name).yes() : otherwise;
    }
  }
}
