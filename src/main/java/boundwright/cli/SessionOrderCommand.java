package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.season.order.OrderDesk;
import boundwright.season.order.OrderPlanner;
import boundwright.season.order.OrderSettings;
import boundwright.season.order.OrderSheet;
import boundwright.season.order.OrderWords;
import boundwright.season.order.RunningOrder;
import boundwright.season.order.SessionAsk;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.time.LocalTime;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The running order of a session, by the minute. */
@Command(
    name = "order",
    description = {
      "Who runs when, and what to leave out when time is lost.",
      "Of today's plan for those who are here, or of a session from a file; with who measures and which tape moves when and by",
      "whom. docs/session-order.md says how.",
      "Example: boundwright session order --minutes 75 --lost 15 --closed grass%n"
    })
final class SessionOrderCommand implements Callable<Integer> {
  private static final long SEED = 1;

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--file", paramLabel = "FILE", description = "A session as JSON (docs/formats.md) instead of today's plan; needs no data folder.")
  private @Nullable String file;

  @Option(names = "--minutes", paramLabel = "N", description = "Minutes for bounding, warm-up not in them, 1 to 300. Default: the settings, or the file.")
  private @Nullable Integer minutes;

  @Option(names = "--lost", paramLabel = "N", description = "Minutes that are lost of them. What to leave out is said.")
  private int lost;

  @Option(names = "--closed", paramLabel = "WHAT", description = "A surface or a place that is closed, as grass when it rains. May be given again.")
  private List<String> closed = List.of();

  @Option(names = "--from", paramLabel = "HH:MM", description = "When the first rep may start. Default: now, or the file.")
  private @Nullable String from;

  @Option(names = "--coaches", paramLabel = "N", description = "Who watch, each one rep at a time, 0 to 10. Default: the settings.")
  private @Nullable Integer coaches;

  @Option(names = "--pits", paramLabel = "N", description = "Pits, 0 to 6. Default: the settings.")
  private @Nullable Integer pits;

  @Option(names = "--lanes", paramLabel = "N", description = "Runways at each pit, 1 to 4. Default: the settings.")
  private @Nullable Integer lanes;

  @Option(names = "--flat-lanes", paramLabel = "N", description = "Lanes of level ground, 0 to 8. Default: the settings.")
  private @Nullable Integer flatLanes;

  @Option(names = "--helper", paramLabel = "NAME", description = "Somebody who measures and does not bound. May be given again.")
  private List<String> helpers = List.of();

  @Option(names = "--keep", description = "The runway page goes by this order today.")
  private boolean keep;

  SessionOrderCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    if (file != null) {
      if (keep || coaches != null || pits != null || lanes != null || flatLanes != null || !helpers.isEmpty()) {
        throw new RefusedException("A file says itself who is there and where; --keep, --coaches, --pits, --lanes, --flat-lanes and --helper are for today's plan. Change the file.");
      }
      OrderFile.Read read = OrderFile.read(s.path(file));
      SessionAsk ask = minutes == null ? read.ask() : read.ask().within(minutes);
      answer(asked(ask), begins(read.begins() == null ? OrderWords.now(s.clock()) : read.begins()));
      return 0;
    }
    try (Workbench bench = data.open(s)) {
      CoachSettings settings = bench.settings().settings();
      OrderSettings kept = bench.order().orderSettings();
      OrderSettings now =
          kept.with(
              pits == null ? kept.pits() : pits, lanes == null ? kept.lanes() : lanes, flatLanes == null ? kept.flatLanes() : flatLanes,
              coaches == null ? kept.coaches() : coaches);
      List<Athlete> here = bench.attendance().here();
      SessionAsk ask =
          bench.orderDesk().ask(here, bench.settings().plan(), settings, now, minutes == null ? kept.minutes() : minutes, helpers);
      SessionAsk asked = asked(ask);
      RunningOrder order = answer(asked, begins(OrderWords.now(s.clock())));
      if (keep) {
        bench.order().keep(s.today(), OrderDesk.ofDay(asked, order));
      }
    }
    return 0;
  }

  private SessionAsk asked(SessionAsk ask) {
    SessionAsk out = lost == 0 ? ask : ask.lost(lost);
    for (String what : closed) {
      out = out.closed(what);
    }
    return out;
  }

  private LocalTime begins(LocalTime otherwise) {
    String written = from;
    return written == null ? otherwise : OrderWords.time(written);
  }

  private RunningOrder answer(SessionAsk ask, LocalTime begins) {
    RunningOrder order = OrderPlanner.thorough(SEED).plan(ask);
    OrderWords words = new OrderWords(ask, order, begins);
    if (top.json()) {
      Json.print(top.surroundings().out(), OrderAnswer.of(ask, order, words));
    } else {
      print(top.surroundings().out(), ask, order, words);
    }
    return order;
  }

  private static void print(PrintWriter out, SessionAsk ask, RunningOrder order, OrderWords words) {
    out.println(words.ends());
    words.drops().forEach(out::println);
    out.println();
    words.laid().forEach(out::println);
    for (OrderSheet.Minute minute : OrderSheet.of(ask, order, words).minutes()) {
      minute.tapes().forEach(t -> out.println("       " + t));
      String time = minute.time();
      for (OrderSheet.At at : minute.at()) {
        if (!at.runs().isEmpty()) {
          out.println(time + "  " + at.place() + ": " + at.said() + (at.sand().isEmpty() ? "" : "   (at the sand: " + at.sand() + ")"));
          time = "     ";
        }
      }
    }
  }
}
