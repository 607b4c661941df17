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
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
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
   * @param order athletes in the planned order of their reps, each as often as they run; empty where they run as they come
   */
  record Page(String day, String unit, List<Fault> faults, List<Long> order) {
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

  /** How long a phone's question waits for the squad to be read again [ms]. */
  private static final long PATIENCE_MS = 100;

  /** Before anything was read. */
  private record Moment(long told, LocalDate day, String stamp, long at_ns) {
    boolean old(Moment now) {
      return told != now.told || (!stamp.equals(now.stamp) && now.at_ns - at_ns > UNSEEN_NS);
    }
  }

  /** As it was read then; after that only what phones brought was written by this program. */
  private record Read(Moment then, Squad squad) {}

  private @Nullable Read last;
  /** Whose log phones changed since. */
  private final Set<Long> changed = ConcurrentHashMap.newKeySet();

  /** Phones changed the log of these: call after it was written and before it is answered. */
  void changed(Set<Long> ids) {
    changed.addAll(ids);
  }

  /** What reads the squad again; null while nothing does. */
  private @Nullable CompletableFuture<Void> coming;
  /** Whose log phones changed while the squad is read again. */
  private final Set<Long> meanwhile = new TreeSet<>();

  /**
   * The squad. What phones brought is in it. After another write it is read again beside: who asks in the meantime waits a moment for it, and
   * is then told what was known before, because phones ask again soon.
   */
  Squad squad() {
    Known known = known();
    CompletableFuture<Void> reading = known.coming;
    if (reading == null) {
      return known.squad;
    }
    try {
      reading.get(PATIENCE_MS, TimeUnit.MILLISECONDS);
    } catch (TimeoutException late) {
      // what was known before is told
    } catch (ExecutionException e) {
      throw e.getCause() instanceof RuntimeException own ? own : new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Read read = last();
    return read == null ? squad() : read.squad;
  }

  /**
   * What can be told at once.
   *
   * @param squad as it was read last, with what phones brought since
   * @param coming done when the squad is read again; null where it is as it is now
   */
  private record Known(Squad squad, @Nullable CompletableFuture<Void> coming) {}

  private synchronized Known known() {
    Set<Long> since = new TreeSet<>();
    for (Iterator<Long> i = changed.iterator(); i.hasNext(); ) {
      since.add(i.next());
      i.remove();
    }
    Moment now = new Moment(bench.told(), LocalDate.now(bench.clock()), bench.stamp(), System.nanoTime());
    Read kept = last;
    if (kept == null || !kept.then.day.equals(now.day)) {
      last = null;
      Squad squad = read(null);
      last = new Read(now, squad);
      return new Known(squad, null);
    }
    Squad squad = kept.squad;
    if (!since.isEmpty()) {
      last = null;
      squad = again(squad, since);
      last = new Read(kept.then, squad);
      if (coming != null) {
        meanwhile.addAll(since);
      }
    }
    if (!kept.then.old(now)) {
      return new Known(squad, null);
    }
    return new Known(squad, coming == null ? readBeside(now, squad) : coming);
  }

  private synchronized @Nullable Read last() {
    return last;
  }

  private CompletableFuture<Void> readBeside(Moment now, Squad before) {
    CompletableFuture<Void> reading = new CompletableFuture<>();
    coming = reading;
    meanwhile.clear();
    Thread thread =
        new Thread(
            () -> {
              try {
                publish(now, read(before));
                reading.complete(null);
              } catch (RuntimeException | Error e) {
                failed();
                reading.completeExceptionally(e);
              }
            },
            "squad for the phones");
    thread.setDaemon(true);
    thread.start();
    return reading;
  }

  private synchronized void publish(Moment now, Squad squad) {
    // a day may have begun meanwhile
    if (last == null || last.then.at_ns <= now.at_ns) {
      last = new Read(now, meanwhile.isEmpty() ? squad : again(squad, Set.copyOf(meanwhile)));
    }
    coming = null;
  }

  private synchronized void failed() {
    coming = null;
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
    // those whom a phone changed are fresh in what is known: a tap's answer waits for nobody else
    Squad squad = known().squad;
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
        catalogue.all().stream().map(RunwayNews::fault).toList(),
        bench.order().order(LocalDate.now(bench.clock())));
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
