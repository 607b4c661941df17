package boundwright.web.runway;

import boundwright.athlete.Athlete;
import boundwright.athlete.Changes;
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
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
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
  record Page(String day, String unit, List<Fault> faults, List<Long> order) {}

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
   * @param settings what the head was made of, beside the page and the list
   * @param all athlete by athlete
   */
  record Squad(Piece begun, Page page, String head, String settings, List<One> all) {}

  /** How long a phone's question waits for the squad to be read again [ms]. */
  private static final long PATIENCE_MS = 100;

  /** An athlete's part, and of which state of their data it is. */
  private record Held(Athlete athlete, LocalDate day, long version, One one) {
    boolean holds(Athlete asked, LocalDate today, Changes.Versions now) {
      return version == now.of(asked.id()) && day.equals(today) && athlete.equals(asked);
    }
  }

  /** The squad as it was read at a state of the data. */
  private record Read(Changes.Versions then, LocalDate day, Squad squad) {}

  private final Map<Long, Held> held = new ConcurrentHashMap<>();
  private @Nullable Read last;
  /** What reads the squad again; null while nothing does. */
  private @Nullable CompletableFuture<Void> coming;

  /**
   * The squad. What was written of single athletes, here or by another program, is in it. After a change that concerns everybody it is read
   * again beside: who asks in the meantime waits a moment for it, and is then told what was known before, because phones ask again soon.
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
   * @param squad as it was read last
   * @param coming done when the squad is read again; null where it is as it is now
   */
  private record Known(Squad squad, @Nullable CompletableFuture<Void> coming) {}

  private synchronized Known known() {
    Changes.Versions now = now();
    LocalDate today = LocalDate.now(bench.clock());
    Read kept = last;
    if (kept == null || !kept.day.equals(today)) {
      Squad squad = read(now, today);
      last = new Read(now, today, squad);
      return new Known(squad, null);
    }
    if (kept.then == now) {
      return new Known(kept.squad, null);
    }
    if (kept.then.ofEverybody() != now.ofEverybody()) {
      return new Known(kept.squad, coming == null ? readBeside() : coming);
    }
    List<Athlete> here = bench.attendance().here();
    Squad squad = new Squad(kept.squad.begun, kept.squad.page, head(kept.squad.settings, kept.squad.page, here), kept.squad.settings, ones(here, now, today));
    last = new Read(now, today, squad);
    return new Known(squad, null);
  }

  private Changes.Versions now() {
    return Objects.requireNonNull(bench.changes().now(), "no phone is answered inside a write");
  }

  private synchronized @Nullable Read last() {
    return last;
  }

  private CompletableFuture<Void> readBeside() {
    CompletableFuture<Void> reading = new CompletableFuture<>();
    coming = reading;
    Thread thread =
        new Thread(
            () -> {
              try {
                Changes.Versions now = now();
                LocalDate today = LocalDate.now(bench.clock());
                publish(new Read(now, today, read(now, today)));
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

  private synchronized void publish(Read read) {
    // a day may have begun meanwhile
    if (last == null || !read.day.isBefore(last.day)) {
      last = read;
    }
    coming = null;
  }

  private synchronized void failed() {
    coming = null;
  }

  private Squad read(Changes.Versions now, LocalDate today) {
    List<Athlete> here = bench.attendance().here();
    Parcel parcel = packer.pack(List.of());
    Page page = page();
    Parcel settings = new Parcel(parcel.day(), parcel.zone(), Instant.EPOCH, parcel.settings(), parcel.guard(), parcel.plan(), List.of());
    return new Squad(ParcelPieces.begun(parcel), page, head(settings.text(), page, here), settings.text(), ones(here, now, today));
  }

  private static String head(String settings, Page page, List<Athlete> here) {
    return hash(settings + page + here.stream().map(Athlete::id).toList());
  }

  /** These athletes as they are now, also if they are not here today; those who are not there any more are left out. */
  List<One> these(Set<Long> ids) {
    Changes.Versions now = now();
    return ones(ids.stream().map(bench.athletes()::byId).flatMap(Optional::stream).toList(), now, LocalDate.now(bench.clock()));
  }

  /** The parts of these; who changed since their part was made has it made again. Looked at once: others may file a newer part meanwhile. */
  private List<One> ones(List<Athlete> athletes, Changes.Versions now, LocalDate today) {
    Map<Long, One> found = new HashMap<>();
    Map<Long, Athlete> changed = new LinkedHashMap<>();
    for (Athlete a : athletes) {
      Held known = heldOf(a, now, today);
      if (known == null) {
        changed.put(a.id(), a);
      } else {
        found.put(a.id(), known.one);
      }
    }
    if (!changed.isEmpty()) {
      List<String> keys = keys();
      for (Parcel.Part part : packer.parts(List.copyOf(changed.values()))) {
        One one = one(part, keys);
        found.put(one.id, one);
        held.put(one.id, new Held(Objects.requireNonNull(changed.get(one.id)), today, now.of(one.id), one));
      }
    }
    return athletes.stream().map(a -> found.get(a.id())).filter(Objects::nonNull).toList();
  }

  private @Nullable Held heldOf(Athlete athlete, Changes.Versions now, LocalDate today) {
    Held known = held.get(athlete.id());
    return known != null && known.holds(athlete, today, now) ? known : null;
  }

  private One one(Parcel.Part part, List<String> keys) {
    long id = part.profile().athlete().id();
    Piece lines = ParcelPieces.lines(part);
    List<String> top = top(id, keys);
    Held known = held.get(id);
    if (known != null && known.one.top.equals(top) && known.one.lines.same(lines)) {
      return known.one;
    }
    return new One(id, lines, top, hash(lines, String.valueOf(top)), new Packed(lines.inJson()));
  }

  private List<String> keys() {
    return new FaultCatalogue(bench.looks().ownFaults()).all().stream().map(FaultAdvice::key).toList();
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
