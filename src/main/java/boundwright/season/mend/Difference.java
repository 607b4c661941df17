package boundwright.season.mend;

import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * A day that is not as it was published.
 *
 * @param athleteId whose
 * @param athlete name
 * @param date which day
 * @param before what was published, or null for rest
 * @param after what holds now, or null for rest
 */
public record Difference(long athleteId, String athlete, LocalDate date, @Nullable Session before, @Nullable Session after) {
  /** Days from {@code from} on that differ, by date, then in the order of the squad. */
  public static List<Difference> between(SeasonPlan before, SeasonPlan after, LocalDate from) {
    List<Difference> out = new ArrayList<>();
    for (SeasonPlan.Year now : after.years()) {
      SeasonPlan.Year old = before.of(now.athleteId()).orElse(new SeasonPlan.Year(now.athleteId(), now.athlete(), List.of(), List.of(), List.of()));
      Set<LocalDate> days = new TreeSet<>();
      old.days().forEach(d -> days.add(d.date()));
      now.days().forEach(d -> days.add(d.date()));
      for (LocalDate day : days) {
        Session was = old.on(day).orElse(null);
        Session is = now.on(day).orElse(null);
        if (!day.isBefore(from) && !Objects.equals(was, is)) {
          out.add(new Difference(now.athleteId(), now.athlete(), day, was, is));
        }
      }
    }
    out.sort(Comparator.comparing(Difference::date));
    return List.copyOf(out);
  }
}
