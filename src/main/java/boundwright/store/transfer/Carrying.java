package boundwright.store.transfer;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Scope;
import boundwright.clip.desk.ClipState;
import boundwright.quantity.RefusedException;
import boundwright.store.AthleteFile;
import boundwright.store.Workbench;
import boundwright.store.backup.Catalogue;
import boundwright.store.engine.Database;
import boundwright.technique.Fault;
import boundwright.technique.FaultTick;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Update;
import org.jspecify.annotations.Nullable;

/**
 * Writes what is kept of an athlete into another store, under numbers of that store, and reads it back before it is kept. The store it
 * comes from stays as it is. Films stay: others may be seen in them, and a yes to being filmed was said to the old club.
 */
final class Carrying {
  private final Workbench from;
  private final Workbench to;
  private final Map<String, Map<Long, Long>> numbers = new HashMap<>();

  Carrying(Workbench from, Workbench to) {
    this.from = from;
    this.to = to;
  }

  /**
   * Writes all of it, or nothing; to be called within a write of the store it goes to.
   *
   * @return the athlete's number there
   * @throws RefusedException if that store has an athlete of this name
   */
  long carry(Athlete who) {
    to.athletes().byName(who.name()).ifPresent(
        there -> {
          throw new RefusedException(
              "There is an athlete '" + there.name() + "' in this club already. Let one of the two clubs change the name first, then take them. Nothing was changed.");
        });
    Map<String, List<Map<String, @Nullable Object>>> rows = packed(new AthleteFile(from).rows(who.id()));
    ownFaults(who.id());
    Map<String, List<Map<String, @Nullable Object>>> sent = new LinkedHashMap<>();
    Database target = to.transactions();
    target.write(
        h -> {
          List<Catalogue.Reference> references = target.references(h);
          for (String table : inOrder(rows.keySet(), references)) {
            List<Map<String, @Nullable Object>> of = Objects.requireNonNull(rows.get(table));
            sent.put(table, of.stream().filter(row -> write(h, table, row, references)).toList());
          }
          return null;
        });
    long there = Objects.requireNonNull(Objects.requireNonNull(numbers.get("athlete")).get(who.id()));
    proven(sent, packed(new AthleteFile(to).rows(there)));
    return there;
  }

  /** What goes, without films and without what was agreed to with the old club alone. */
  private static Map<String, List<Map<String, @Nullable Object>>> packed(Map<String, List<Map<String, @Nullable Object>>> all) {
    Map<String, List<Map<String, @Nullable Object>>> out = new LinkedHashMap<>();
    all.forEach((table, rows) -> {
      if (Baggage.GOES.contains(table)) {
        out.put(table, rows.stream().filter(r -> goes(table, r)).map(r -> bare(table, r)).toList());
      }
    });
    return out;
  }

  private static boolean goes(String table, Map<String, @Nullable Object> row) {
    return switch (table) {
      case "consent" -> Scope.MOVE.name().equals(row.get("scope"));
      case "clip" -> ClipState.READ.name().equals(row.get("state"));
      default -> true;
    };
  }

  private static Map<String, @Nullable Object> bare(String table, Map<String, @Nullable Object> row) {
    if (!table.equals("clip")) {
      return row;
    }
    Map<String, @Nullable Object> out = new LinkedHashMap<>(row);
    out.put("film_kept", 0);
    return out;
  }

  /** Parents before their children. */
  private static List<String> inOrder(Set<String> tables, List<Catalogue.Reference> references) {
    List<String> out = new ArrayList<>();
    while (out.size() < tables.size()) {
      List<String> next =
          tables.stream()
              .filter(t -> !out.contains(t))
              .filter(t -> references.stream().noneMatch(r -> r.table().equals(t) && tables.contains(r.target()) && !out.contains(r.target())))
              .toList();
      if (next.isEmpty()) {
        throw new IllegalStateException("tables in a circle: " + tables);
      }
      out.addAll(next);
    }
    return out;
  }

  /** @return false for a row that hangs on what stays */
  private boolean write(Handle h, String table, Map<String, @Nullable Object> row, List<Catalogue.Reference> references) {
    Map<String, @Nullable Object> values = new LinkedHashMap<>(row);
    for (Catalogue.Reference r : references) {
      Object was = r.table().equals(table) ? values.get(r.column()) : null;
      if (was != null) {
        Long now = numbers.getOrDefault(r.target(), Map.of()).get(((Number) was).longValue());
        if (now == null && r.whenErased().equals("CASCADE")) {
          return false;
        }
        values.put(r.column(), now);
      }
    }
    Object number = values.containsKey("id") ? values.remove("id") : null;
    String columns = String.join("\", \"", values.keySet());
    Update insert =
        h.createUpdate("INSERT INTO \"" + table + "\" (\"" + columns + "\") VALUES (" + String.join(", ", values.keySet().stream().map(c -> ":" + c).toList()) + ")");
    values.forEach(insert::bind);
    if (number == null) {
      insert.execute();
    } else {
      numbers
          .computeIfAbsent(table, t -> new HashMap<>())
          .put(((Number) number).longValue(), insert.executeAndReturnGeneratedKeys("id").mapTo(Long.class).one());
    }
    return true;
  }

  /** Faults that the old coach named, where the reps speak of them and the new coach has none of that key. */
  private void ownFaults(long athleteId) {
    Set<String> spokenOf =
        Stream.concat(
                from.reps().inOrder(athleteId).stream().flatMap(r -> FaultTick.parseAll(r.faults()).stream()),
                from.looks().secondLooks(athleteId).stream().flatMap(l -> l.ticks().stream()))
            .map(FaultTick::key)
            .collect(Collectors.toSet());
    Set<String> there = to.looks().ownFaults().stream().map(Fault::key).collect(Collectors.toSet());
    from.looks().ownFaults().stream().filter(f -> spokenOf.contains(f.key()) && !there.contains(f.key())).forEach(to.looks()::keep);
  }

  /** Compares what was to go with what arrived, but for numbers, which are others there. */
  private static void proven(Map<String, List<Map<String, @Nullable Object>>> sent, Map<String, List<Map<String, @Nullable Object>>> arrived) {
    for (Map.Entry<String, List<Map<String, @Nullable Object>>> e : sent.entrySet()) {
      List<String> was = e.getValue().stream().map(Carrying::withoutNumbers).toList();
      List<String> is = arrived.getOrDefault(e.getKey(), List.of()).stream().map(Carrying::withoutNumbers).toList();
      if (!was.equals(is)) {
        throw new IllegalStateException("of the table " + e.getKey() + " " + was.size() + " rows went and " + is.size() + " arrived, or others");
      }
    }
  }

  private static String withoutNumbers(Map<String, @Nullable Object> row) {
    StringBuilder out = new StringBuilder();
    row.forEach(
        (column, value) -> {
          if (!column.equals("id") && !column.endsWith("_id")) {
            out.append(column).append('=').append(value instanceof byte[] bytes ? Arrays.toString(bytes) : value).append('\n');
          }
        });
    return out.toString();
  }
}
