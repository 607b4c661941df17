package boundwright.phone.js;

import boundwright.phone.Entry;
import boundwright.phone.RunwayCard;
import boundwright.phone.RunwayDay;
import boundwright.quantity.RefusedException;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.teavm.jso.JSBody;
import org.teavm.jso.JSExport;
import org.teavm.jso.JSObject;

/**
 * What {@code phone.js} exports. One day is open at a time. What is refused is thrown as an {@code Error} whose message is the sentence
 * for the coach and whose name is {@code Refused}.
 */
public final class PhoneModule {
  private static @Nullable RunwayDay day;

  private PhoneModule() {}

  /** The module does nothing until it is asked. */
  public static void main(String[] args) {
    day = null;
  }

  /** Opens a day; see {@link RunwayDay#open(String)}. */
  @JSExport
  public static void open(String text) {
    told(
        () -> {
          day = RunwayDay.open(text);
          return "";
        });
  }

  /** What the server says of an athlete now; see {@link RunwayDay#refresh}. */
  @JSExport
  public static void refresh(String text) {
    told(
        () -> {
          opened().refresh(text);
          return "";
        });
  }

  /** All unsent entries, one a line; answers an array of {@code {token, why}}; see {@link RunwayDay#entries}. */
  @JSExport
  public static JSObject entries(String lines) {
    return told(
        () -> {
          List<String> all = Arrays.stream(lines.split("\n", -1)).filter(l -> !l.isBlank()).toList();
          JSObject out = array();
          for (RunwayDay.Refused r : opened().entries(all)) {
            JSObject one = object();
            put(one, "token", r.token());
            put(one, "why", r.why());
            push(out, one);
          }
          return out;
        });
  }

  /** One entry more; answers the sentence; see {@link RunwayDay#add}. */
  @JSExport
  public static String add(String line) {
    return told(() -> opened().add(line));
  }

  /** The card as an object; see {@link RunwayCard}. */
  @JSExport
  public static JSObject card(double athleteId, int drill) {
    return told(() -> card(opened().card(Math.round(athleteId), drill)));
  }

  /** The athletes as an array of objects; see {@link RunwayDay#squad}. */
  @JSExport
  public static JSObject squad() {
    return told(
        () -> {
          JSObject out = array();
          for (RunwayDay.Who w : opened().squad()) {
            JSObject one = object();
            put(one, "athleteId", (double) w.athleteId());
            put(one, "name", w.name());
            put(one, "held", w.held());
            JSObject drills = array();
            for (RunwayDay.Step s : w.drills()) {
              JSObject step = object();
              put(step, "drill", s.drill());
              put(step, "letters", s.letters());
              put(step, "from", s.from());
              put(step, "repsDone", s.repsDone());
              put(step, "repsPlanned", s.repsPlanned());
              push(drills, step);
            }
            put(one, "drills", drills);
            push(out, one);
          }
          return out;
        });
  }

  /** A length in metres as the coach writes it; see {@link RunwayDay#write}. */
  @JSExport
  public static String write(double metres) {
    return told(() -> opened().write(metres));
  }

  /** A length that was typed, in metres; see {@link RunwayDay#read}. */
  @JSExport
  public static double read(String typed) {
    return told(() -> opened().read(typed));
  }

  /** The numbers of a card to the last digit, for the test that compares this module with the server; see {@link RunwayDay#figures}. */
  @JSExport
  public static JSObject figures(double athleteId, int drill) {
    return told(
        () -> {
          JSObject out = array();
          opened().figures(Math.round(athleteId), drill).forEach(x -> push(out, x.doubleValue()));
          return out;
        });
  }

  /** An entry's line put into its one form, so that the page can check one before it keeps it; see {@link Entry#parse}. */
  @JSExport
  public static String tidy(String line) {
    return told(() -> Entry.parse(line).line());
  }

  private static RunwayDay opened() {
    if (day == null) {
      throw new RefusedException("No day is open. Load the page again where there is a connection.");
    }
    return day;
  }

  private static <T> T told(Supplier<T> work) {
    try {
      return work.get();
    } catch (RefusedException e) {
      fail(String.valueOf(e.getMessage()));
      throw e;
    }
  }

  private static JSObject card(RunwayCard c) {
    JSObject o = object();
    put(o, "athleteId", (double) c.athleteId());
    put(o, "drill", c.drill());
    put(o, "name", c.name());
    put(o, "letters", c.letters());
    put(o, "sequence", c.sequence());
    put(o, "steps", c.steps());
    put(o, "surface", c.surface());
    put(o, "from", c.from());
    put(o, "inSand", c.inSand());
    put(o, "held", c.held());
    put(o, "reason", c.reason());
    put(o, "mark", parts(c.mark()));
    number(o, "mark_m", c.mark_m());
    number(o, "lay_m", c.lay_m());
    put(o, "open", c.open());
    put(o, "works", c.works());
    put(o, "chance", c.chance());
    put(o, "start", parts(c.start()));
    put(o, "startSaid", c.startSaid());
    put(o, "answer", c.answer());
    put(o, "caution", c.caution());
    put(o, "roomLeft", c.roomLeft());
    put(o, "warnings", words(c.warnings()));
    put(o, "next", c.next());
    put(o, "first", c.first());
    put(o, "restsOn", c.restsOn());
    put(o, "strip", c.strip());
    put(o, "stripWide", c.stripWide());
    put(o, "repsDone", c.repsDone());
    put(o, "repsPlanned", c.repsPlanned());
    put(o, "feet", words(c.feet()));
    JSObject done = array();
    for (RunwayCard.Done d : c.done()) {
      JSObject one = object();
      put(one, "of", d.of());
      put(one, "letters", d.letters());
      put(one, "steps", d.steps());
      put(one, "said", d.said());
      put(one, "looked", d.looked());
      put(one, "faults", words(d.faults()));
      push(done, one);
    }
    put(o, "done", done);
    return o;
  }

  private static JSObject parts(List<RunwayCard.Part> parts) {
    JSObject out = array();
    for (RunwayCard.Part p : parts) {
      JSObject one = object();
      put(one, "text", p.text());
      put(one, "small", p.small());
      push(out, one);
    }
    return out;
  }

  private static JSObject words(List<String> words) {
    JSObject out = array();
    words.forEach(w -> push(out, w));
    return out;
  }

  private static void number(JSObject o, String key, @Nullable Double value) {
    if (value == null) {
      putNull(o, key);
    } else {
      put(o, key, value.doubleValue());
    }
  }

  @JSBody(script = "return {};")
  private static native JSObject object();

  @JSBody(script = "return [];")
  private static native JSObject array();

  @JSBody(params = {"o", "key", "value"}, script = "o[key] = value;")
  private static native void put(JSObject o, String key, String value);

  @JSBody(params = {"o", "key", "value"}, script = "o[key] = value;")
  private static native void put(JSObject o, String key, double value);

  @JSBody(params = {"o", "key", "value"}, script = "o[key] = value;")
  private static native void put(JSObject o, String key, boolean value);

  @JSBody(params = {"o", "key", "value"}, script = "o[key] = value;")
  private static native void put(JSObject o, String key, JSObject value);

  @JSBody(params = {"o", "key"}, script = "o[key] = null;")
  private static native void putNull(JSObject o, String key);

  @JSBody(params = {"all", "value"}, script = "all.push(value);")
  private static native void push(JSObject all, JSObject value);

  @JSBody(params = {"all", "value"}, script = "all.push(value);")
  private static native void push(JSObject all, String value);

  @JSBody(params = {"all", "value"}, script = "all.push(value);")
  private static native void push(JSObject all, double value);

  @JSBody(params = {"why"}, script = "const e = new Error(why); e.name = 'Refused'; throw e;")
  private static native void fail(String why);
}
