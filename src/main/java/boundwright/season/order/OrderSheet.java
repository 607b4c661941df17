package boundwright.season.order;

import boundwright.season.order.RunningOrder.Go;
import boundwright.season.order.RunningOrder.Lay;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * An order as a sheet, minute by minute: at each place the names in their order; the drill and the mark only where they change for an athlete,
 * who is at the sand only where that changes, so that there is little to read.
 *
 * @param minutes those in which something starts
 * @param places names of the places that are used, in order
 */
public record OrderSheet(List<Minute> minutes, List<String> places) {
  /** Takes copies. */
  public OrderSheet {
    minutes = List.copyOf(minutes);
    places = List.copyOf(places);
  }

  /**
   * A minute.
   *
   * @param time {@code 17:05}
   * @param at one for each place of the sheet, in order
   * @param tapes tapes that move in it, a sentence each
   */
  public record Minute(String time, List<At> at, List<String> tapes) {
    /** Takes copies. */
    public Minute {
      at = List.copyOf(at);
      tapes = List.copyOf(tapes);
    }
  }

  /**
   * What happens at a place in a minute.
   *
   * @param place its name
   * @param runs who start, in order
   * @param sand who measures from now on; empty where that does not change
   */
  public record At(String place, List<Run> runs, String sand) {
    /** Takes a copy. */
    public At {
      runs = List.copyOf(runs);
    }

    /** {@code Otis RRL 12.90 m, Mara} */
    public String said() {
      return String.join(", ", runs.stream().map(Run::said).toList());
    }
  }

  /**
   * Who starts.
   *
   * @param name who
   * @param drill letters of the drill, empty where it is the same as before
   * @param mark the tape as it is written, empty where it is the same as before or there is none
   */
  public record Run(String name, String drill, String mark) {
    /** Name, drill, mark. */
    public String said() {
      return name + (drill.isEmpty() ? "" : " " + drill) + (mark.isEmpty() ? "" : " " + mark);
    }
  }

  /** The sheet of an order. */
  public static OrderSheet of(SessionAsk ask, RunningOrder order, OrderWords words) {
    List<String> places =
        ask.places().stream().map(Place::name).filter(p -> order.goes().stream().anyMatch(g -> g.place().equals(p))).toList();
    Map<String, List<Go>> byMinute = new LinkedHashMap<>();
    order.goes().forEach(g -> byMinute.computeIfAbsent(words.minute(g.start_s()), t -> new ArrayList<>()).add(g));
    Map<String, List<String>> moves = new HashMap<>();
    for (Lay lay : order.tapes()) {
      if (lay.from_m() != null) {
        // it is done before the next rep there starts, so it stands with that
        int next =
            order.goes().stream().filter(g -> g.place().equals(lay.place()) && g.start_s() >= lay.time_s()).mapToInt(Go::start_s).min().orElse(lay.time_s());
        moves.computeIfAbsent(words.minute(next), t -> new ArrayList<>()).add(words.said(lay));
      }
    }
    Map<String, String> last = new HashMap<>();
    List<Minute> out = new ArrayList<>();
    byMinute.forEach(
        (time, goes) -> {
          List<At> at = new ArrayList<>();
          for (String place : places) {
            List<Run> runs = new ArrayList<>();
            String sand = "";
            for (Go g : goes) {
              if (g.place().equals(place)) {
                runs.add(run(ask, g, last));
                String measures = Objects.requireNonNullElse(g.measures(), "");
                if (!measures.isEmpty() && !measures.equals(last.put("/" + place, measures))) {
                  sand = measures;
                }
              }
            }
            at.add(new At(place, runs, sand));
          }
          out.add(new Minute(time, at, moves.getOrDefault(time, List.of())));
        });
    return new OrderSheet(out, places);
  }

  private static Run run(SessionAsk ask, Go go, Map<String, String> last) {
    String letters = ask.drills().get(go.drill()).sequence().text();
    String drill = String.valueOf(go.drill()).equals(last.put(go.name(), String.valueOf(go.drill()))) ? "" : letters;
    Double mark_m = go.mark_m();
    String mark = mark_m == null ? "" : ask.unit().write(mark_m);
    boolean same = mark.equals(last.put("=" + go.name(), mark));
    return new Run(go.name(), drill, same ? "" : mark);
  }
}
