package boundwright.store;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;

/**
 * Which rows of a file are here already. A row is when its athlete has a rep that says the same in every column; equal rows count, so that two
 * equal taps in the file and one here leave one to take. Of each rep that is here sixteen bytes of its SHA-256 are held.
 */
final class AlreadyThere {
  private final Workbench bench;
  private final LongFunction<List<Rep>> kept;
  private final Map<String, Map<Mark, Integer>> left = new HashMap<>();
  private final Set<String> unknown = new HashSet<>();
  private final MessageDigest sha;

  /** {@code kept} gives the reps of an athlete. */
  AlreadyThere(Workbench bench, LongFunction<List<Rep>> kept) {
    this.bench = bench;
    this.kept = kept;
    try {
      this.sha = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What a rep says whoever it belongs to and however its sequence is spelled. */
  private record Mark(long high, long low) {}

  /** Whether a row is here; a rep that is here matches one row only. */
  boolean matches(RepCsv.Row row) {
    Map<Mark, Integer> here = left.computeIfAbsent(SqlAthletes.key(row.athlete()), key -> of(key, row.athlete()));
    if (here.isEmpty()) {
      return false;
    }
    Mark mark = mark(row.rep());
    int equal = here.getOrDefault(mark, 0);
    if (equal > 0) {
      here.put(mark, equal - 1);
    }
    return equal > 0;
  }

  /** How many athletes of the rows that were asked about are not here. */
  int unknown() {
    return unknown.size();
  }

  private Map<Mark, Integer> of(String key, String name) {
    Map<Mark, Integer> counts = new HashMap<>();
    Optional<Athlete> athlete = bench.athletes().byName(name);
    athlete.ifPresent(a -> kept.apply(a.id()).forEach(r -> counts.merge(mark(r), 1, Integer::sum)));
    if (athlete.isEmpty()) {
      unknown.add(key);
    }
    return counts;
  }

  private Mark mark(Rep r) {
    StringBuilder said = new StringBuilder(64);
    said.append(r.date()).append('|');
    r.sequence().contacts().forEach(foot -> said.append(foot == Foot.RIGHT ? 'R' : 'L'));
    said.append('|').append(r.approachSteps()).append('|').append(r.surface()).append('|').append(r.footprints_m()).append('|');
    add(said, r.landing_m());
    add(said, r.outcome());
    add(said, r.brokeOffAfter());
    add(said, r.markToSand_m());
    said.append(r.judged());
    // a fault's name holds no semicolon
    r.faults().forEach(f -> said.append(';').append(f));
    ByteBuffer bytes = ByteBuffer.wrap(sha.digest(said.toString().getBytes(StandardCharsets.UTF_8)));
    return new Mark(bytes.getLong(), bytes.getLong());
  }

  private static void add(StringBuilder to, @Nullable Object value) {
    to.append(value).append('|');
  }
}
