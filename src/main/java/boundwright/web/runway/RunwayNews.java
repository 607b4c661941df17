package boundwright.web.runway;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.phone.Packer;
import boundwright.phone.Parcel;
import boundwright.phone.ParcelPieces;
import boundwright.phone.ParcelPieces.Piece;
import boundwright.store.Workbench;
import boundwright.technique.FaultAdvice;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTick;
import boundwright.web.page.Ticks;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What a phone is told: the whole squad, or only what changed since. */
final class RunwayNews {
  /** Over how many reps the faults that an athlete shows most are counted (judgement: about a month). */
  private static final int RECENT = 60;
  private static final int CHIPS = 3;

  private final Workbench bench;
  private final Packer packer;

  RunwayNews(Workbench bench) {
    this.bench = bench;
    this.packer =
        new Packer(
            bench.athletes(), bench.reps(), bench.logbook(), bench.settings(), bench.workLog(), bench.load(), bench.care(),
            () -> bench.advisor().rungs(), tokens(bench), bench.clock());
  }

  private static Packer.Tokens tokens(Workbench bench) {
    return new Packer.Tokens() {
      @Override
      public @Nullable String of(long repId) {
        return bench.track().token(repId);
      }

      @Override
      public List<String> gone(long athleteId, LocalDate day) {
        return bench.track().goneTokens(athleteId, day);
      }
    };
  }

  /**
   * What the page needs beside the marks.
   *
   * @param day of the session
   * @param unit {@code METRES} or {@code FEET_INCHES}
   * @param faults that can be ticked
   */
  record Page(String day, String unit, List<Fault> faults) {
    List<String> keys() {
      return faults.stream().map(Fault::key).toList();
    }
  }

  /** A fault with what is said about it. */
  record Fault(String key, String label, String say) {}

  /**
   * One athlete.
   *
   * @param id the number
   * @param lines for the phone's model
   * @param top keys of the faults that this athlete shows most
   * @param hash changes when any of it does
   * @param text the lines as they stand inside JSON
   */
  record One(long id, Piece lines, List<String> top, String hash, Packed text) {}

  /**
   * The squad.
   *
   * @param begun the text for the phone's model up to the athletes
   * @param page what the page needs beside
   * @param head changes when anything but an athlete's own part does
   * @param all athlete by athlete
   */
  record Squad(Piece begun, Page page, String head, List<One> all) {
    /** These athletes, in the squad's order. */
    List<One> these(Set<Long> ids) {
      return all.stream().filter(o -> ids.contains(o.id)).toList();
    }
  }

  /** How long a write of another program may stay unseen [ns]; this one's are seen at once. */
  private static final long UNSEEN_NS = 10_000_000_000L;

  /** As it was read at a time; after that only what phones brought was written by this program. */
  private record Read(long told, LocalDate day, String stamp, long at_ns, Squad squad) {}

  private @Nullable Read last;
  /** Whose log phones changed since. */
  private final Set<Long> changed = ConcurrentHashMap.newKeySet();

  /** Phones changed the log of these: call after it was written and before it is answered. */
  void changed(Set<Long> ids) {
    changed.addAll(ids);
  }

  /** The squad as it is now. Read again after something was written; after what phones brought, only those whom it touched. */
  synchronized Squad squad() {
    // before anything is read: what comes meanwhile is read next time
    long told = bench.told();
    LocalDate day = LocalDate.now(bench.clock());
    String stamp = bench.stamp();
    Set<Long> since = new TreeSet<>();
    for (Iterator<Long> i = changed.iterator(); i.hasNext(); ) {
      since.add(i.next());
      i.remove();
    }
    Read kept = last;
    Squad before = kept == null ? null : kept.squad;
    last = null;
    if (kept == null || kept.told != told || !kept.day.equals(day) || (!kept.stamp.equals(stamp) && System.nanoTime() - kept.at_ns > UNSEEN_NS)) {
      kept = new Read(told, day, stamp, System.nanoTime(), read(before));
    } else if (!since.isEmpty()) {
      kept = new Read(told, day, kept.stamp, kept.at_ns, again(kept.squad, since));
    }
    last = kept;
    return kept.squad;
  }

  private Squad read(@Nullable Squad before) {
    Map<Long, One> known = new HashMap<>();
    if (before != null) {
      before.all.forEach(o -> known.put(o.id, o));
    }
    List<Athlete> athletes = bench.attendance().here();
    Parcel parcel = packer.pack(athletes);
    Page page = page();
    List<String> keys = page.keys();
    List<One> all = parcel.parts().stream().map(p -> one(p, known, keys)).toList();
    Parcel head = new Parcel(parcel.day(), parcel.zone(), Instant.EPOCH, parcel.settings(), parcel.guard(), parcel.plan(), List.of());
    return new Squad(ParcelPieces.begun(parcel), page, hash(head.text() + page + all.stream().map(One::id).toList()), all);
  }

  private Squad again(Squad squad, Set<Long> ids) {
    List<Athlete> here = bench.attendance().here();
    if (!here.stream().map(Athlete::id).toList().equals(squad.all.stream().map(One::id).toList())) {
      // who has a rep is here
      return read(squad);
    }
    Map<Long, One> fresh = new HashMap<>();
    List<String> keys = squad.page.keys();
    packer.parts(here.stream().filter(a -> ids.contains(a.id())).toList()).forEach(p -> fresh.put(p.profile().athlete().id(), one(p, Map.of(), keys)));
    return new Squad(squad.begun, squad.page, squad.head, squad.all.stream().map(o -> fresh.getOrDefault(o.id, o)).toList());
  }

  /** These athletes as they are now, also if they are not here today; those who are not there any more are left out. */
  List<One> these(Set<Long> ids) {
    Squad squad = squad();
    List<One> here = squad.these(ids);
    List<String> keys = squad.page.keys();
    Set<Long> rest = new TreeSet<>(ids);
    here.forEach(o -> rest.remove(o.id));
    List<Athlete> away = rest.stream().map(bench.athletes()::byId).flatMap(Optional::stream).toList();
    return Stream.concat(here.stream(), packer.parts(away).stream().map(p -> one(p, Map.of(), keys))).toList();
  }

  private One one(Parcel.Part part, Map<Long, One> known, List<String> keys) {
    long id = part.profile().athlete().id();
    Piece lines = ParcelPieces.lines(part);
    List<String> top = top(id, keys);
    One before = known.get(id);
    if (before != null && before.top.equals(top) && before.lines.same(lines)) {
      return before;
    }
    return new One(id, lines, top, hash(lines, String.valueOf(top)), new Packed(lines.inJson()));
  }

  private Page page() {
    FaultCatalogue catalogue = new FaultCatalogue(bench.looks().ownFaults());
    return new Page(
        LocalDate.now(bench.clock()).toString(),
        bench.settings().settings().unit().name(),
        catalogue.all().stream().map(RunwayNews::fault).toList());
  }

  private static Fault fault(FaultAdvice a) {
    return new Fault(a.key(), a.label(), a.say());
  }

  /** The faults that this athlete shows most, filled up from the head of the list. */
  private List<String> top(long athleteId, List<String> known) {
    Map<String, Integer> seen = new LinkedHashMap<>();
    for (Rep rep : bench.reps().recent(athleteId, RECENT)) {
      if (rep.judged()) {
        Set<String> keys = new LinkedHashSet<>();
        Ticks.kept(rep).orElse(List.of()).stream().map(FaultTick::key).forEach(keys::add);
        keys.forEach(k -> seen.merge(k, 1, Integer::sum));
      }
    }
    List<String> out = new ArrayList<>(seen.keySet());
    out.retainAll(known);
    out.sort((a, b) -> Integer.compare(seen.getOrDefault(b, 0), seen.getOrDefault(a, 0)));
    known.stream().filter(k -> !out.contains(k)).forEach(out::add);
    return List.copyOf(out.subList(0, Math.min(CHIPS, out.size())));
  }

  private static String hash(String text) {
    return hash(null, text);
  }

  private static String hash(@Nullable Piece lines, String text) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      if (lines != null) {
        lines.into(digest);
      }
      return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)), 0, 6);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
