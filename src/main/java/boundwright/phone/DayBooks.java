package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.load.CareRepository;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.LegCare;
import boundwright.load.LoadRepository;
import boundwright.load.SeasonStart;
import boundwright.load.WorkLog;
import boundwright.load.account.ContactTimes.Timed;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LastWeek;
import boundwright.load.account.OtherWork;
import boundwright.load.account.Work;
import boundwright.load.rating.SessionRating;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The books that the verdict about the load is read from, of the phone's athletes; nothing is written in them here. */
final class DayBooks implements WorkLog, LoadRepository, CareRepository {
  private final GuardSettings guard;
  private final Map<Long, PhoneAthlete> squad;
  private LocalDate day;

  DayBooks(GuardSettings guard, Map<Long, PhoneAthlete> squad, LocalDate day) {
    this.guard = guard;
    this.squad = squad;
    this.day = day;
  }

  /** On another day what was today is past. */
  void on(LocalDate another) {
    day = another;
  }

  private static UnsupportedOperationException readOnly() {
    return new UnsupportedOperationException("the phone keeps entries, and the server writes these books from them");
  }

  @Override
  public Map<Long, List<DayLoad>> since(List<Athlete> athletes, LocalDate from) {
    Map<Long, List<DayLoad>> out = new LinkedHashMap<>();
    for (Athlete a : athletes) {
      PhoneAthlete p = squad.get(a.id());
      out.put(a.id(), p == null ? List.of() : days(p).stream().filter(d -> !d.date().isBefore(from)).toList());
    }
    return out;
  }

  /** Days before today as handed out, then those with reps of today; the same contacts once with how often, as the server keeps them. */
  private static List<DayLoad> days(PhoneAthlete p) {
    Map<LocalDate, Map<Work, Integer>> fresh = new LinkedHashMap<>();
    p.reps().forEach(h -> fresh.computeIfAbsent(h.rep().date(), d -> new LinkedHashMap<>()).merge(Work.of(h.rep()), 1, Integer::sum));
    DayLoad other = p.part().other();
    if (!other.isEmpty()) {
      fresh.computeIfAbsent(other.date(), d -> new LinkedHashMap<>());
    }
    List<DayLoad> out = new ArrayList<>(p.part().history().days());
    fresh.forEach(
        (date, work) -> {
          List<Work> all = new ArrayList<>();
          work.forEach((w, n) -> all.add(new Work(w.sequence(), Math.min(n, Work.MOST_REPS), w.approachSteps(), w.surface(), w.kind(), w.measured())));
          boolean here = date.equals(other.date());
          if (here) {
            all.addAll(other.work());
          }
          out.add(new DayLoad(date, all, here ? other.other() : List.of()));
        });
    out.sort((a, b) -> a.date().compareTo(b.date()));
    return out;
  }

  @Override
  public Map<Long, LocalDate> first(List<Athlete> athletes) {
    Map<Long, LocalDate> out = new HashMap<>();
    for (Athlete a : athletes) {
      PhoneAthlete p = squad.get(a.id());
      LocalDate first = p == null ? null : p.part().history().first();
      if (first == null && p != null) {
        first = days(p).stream().filter(d -> !d.work().isEmpty()).findFirst().map(DayLoad::date).orElse(null);
      }
      if (first != null) {
        out.put(a.id(), first);
      }
    }
    return out;
  }

  @Override
  public Map<Long, LastWeek> lastWeeks() {
    Map<Long, LastWeek> out = new HashMap<>();
    squad.forEach(
        (id, p) -> {
          LastWeek word = p.part().history().lastWeek();
          if (word != null) {
            out.put(id, word);
          }
        });
    return out;
  }

  @Override
  public List<SeasonStart> seasons() {
    List<SeasonStart> out = new ArrayList<>();
    squad.forEach(
        (id, p) -> {
          if (p.part().season() != null) {
            out.add(new SeasonStart(id, LocalDate.ofEpochDay(0), p.part().season()));
          }
        });
    return out;
  }

  @Override
  public Map<Long, List<Timed>> timed(List<Long> athletes, LocalDate before) {
    Map<Long, List<Timed>> out = new HashMap<>();
    for (Long id : athletes) {
      PhoneAthlete p = squad.get(id);
      if (p != null && !p.part().timed().isEmpty()) {
        out.put(id, p.part().timed());
      }
    }
    return out;
  }

  @Override
  public LegCare care(long athleteId, LocalDate today) {
    PhoneAthlete p = squad.get(athleteId);
    return p == null ? LegCare.NONE : p.part().care();
  }

  @Override
  public Map<Long, LegCare> cares(List<Long> athletes, LocalDate today) {
    Map<Long, LegCare> out = new HashMap<>();
    athletes.forEach(id -> out.put(id, care(id, today)));
    return out;
  }

  @Override
  public List<GuardOverride> overrides(long athleteId, int most) {
    PhoneAthlete p = squad.get(athleteId);
    List<GuardOverride> out = new ArrayList<>();
    for (GuardOverride o : p == null ? List.<GuardOverride>of() : p.part().overrides()) {
      out.add(new GuardOverride(o.id(), o.athleteId(), day, o.rule(), o.answer(), o.said(), o.reason()));
    }
    return out;
  }

  @Override
  public GuardSettings guard() {
    return guard;
  }

  @Override
  public List<OtherWork> otherWork(long athleteId, LocalDate from) {
    throw readOnly();
  }

  @Override
  public List<SessionRating> ratings(long athleteId, LocalDate from) {
    throw readOnly();
  }

  @Override
  public OtherWork add(OtherWork work) {
    throw readOnly();
  }

  @Override
  public Optional<OtherWork> removeOtherWork(long athleteId, long id) {
    throw readOnly();
  }

  @Override
  public void keep(long athleteId, LastWeek word) {
    throw readOnly();
  }

  @Override
  public void keep(SeasonStart start) {
    throw readOnly();
  }

  @Override
  public void remove(SeasonStart start) {
    throw readOnly();
  }

  @Override
  public List<Pain> pains(long athleteId, LocalDate from) {
    throw readOnly();
  }

  @Override
  public void setGrowing(long athleteId, boolean growing, @Nullable LocalDate firstSession) {
    throw readOnly();
  }

  @Override
  public Pain addPain(long athleteId, Pain pain) {
    throw readOnly();
  }

  @Override
  public void setSettled(long athleteId, long painId, boolean settled) {
    throw readOnly();
  }

  @Override
  public MedicalHold openHold(long athleteId, MedicalHold hold) {
    throw readOnly();
  }

  @Override
  public void endHold(long athleteId, long holdId, String clearedBy, LocalDate clearedOn) {
    throw readOnly();
  }

  @Override
  public void keep(GuardOverride override) {
    throw readOnly();
  }

  @Override
  public void keep(SessionRating rating) {
    throw readOnly();
  }

  @Override
  public void keep(GuardSettings settings) {
    throw readOnly();
  }
}
