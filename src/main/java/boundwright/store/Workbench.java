package boundwright.store;

import boundwright.approach.ApproachDesk;
import boundwright.approach.aim.AimDesk;
import boundwright.approach.full.FullRunDesk;
import boundwright.approach.legs.LegDesk;
import boundwright.approach.weather.WeatherDesk;
import boundwright.athlete.growth.GrowthDesk;
import boundwright.athlete.person.People;
import boundwright.athlete.person.PersonRepository;
import boundwright.clip.day.Parts;
import boundwright.clip.day.SessionDesk;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.keep.KeptFilms;
import boundwright.clip.pose.Weights;
import boundwright.clip.scan.ScanProcess;
import boundwright.clip.session.CutProcess;
import boundwright.flight.Logbook;
import boundwright.jump.PhaseDesk;
import boundwright.jump.takeoff.LongJumpDesk;
import boundwright.load.LoadDesk;
import boundwright.meet.EventsDesk;
import boundwright.meet.MeetDesk;
import boundwright.meet.chance.ChanceDesk;
import boundwright.meet.day.DayDesk;
import boundwright.quantity.RefusedException;
import boundwright.readiness.LadderDesk;
import boundwright.readiness.back.BackDesk;
import boundwright.runway.MarkAdvisor;
import boundwright.runway.Rungs;
import boundwright.season.order.OrderDesk;
import boundwright.store.backup.BackupDesk;
import boundwright.store.backup.DataCheck;
import boundwright.store.backup.Everything;
import boundwright.store.backup.Leftovers;
import boundwright.store.backup.Restore;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.Database;
import boundwright.store.engine.FarFilms;
import boundwright.store.engine.FilmHands;
import boundwright.store.engine.JobQueue;
import boundwright.store.engine.Schema;
import boundwright.store.people.SqlGrowth;
import boundwright.store.people.SqlPeople;
import boundwright.store.view.Seen;
import boundwright.store.view.SeenGrowth;
import boundwright.store.view.SeenPeople;
import boundwright.takeoffs.RunJumpDesk;
import boundwright.track.Attendance;
import boundwright.track.PlannedDrills;
import boundwright.track.TrackDesk;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Set;

/** One open data folder with everything wired to it. Safe to use from many threads; close it when done. */
public final class Workbench extends Repositories implements AutoCloseable {
  private final Seen seen;
  private final Beside beside;
  private final ClipDesk.Scan scan;
  private final SessionDesk.Cut cut;
  private final FilmHands hands;
  private final KeptFilms films;
  private final Logbook logbook;
  private final MarkAdvisor advisor;
  private final LoadDesk loadDesk;
  private final LadderDesk ladderDesk;
  private final BackDesk backDesk;
  private final PhaseDesk phaseDesk;
  private final LongJumpDesk longJumpDesk;
  private final RunJumpDesk runJumpDesk;
  private final ApproachDesk approachDesk;
  private final AimDesk aimDesk;
  private final FullRunDesk fullRunDesk;
  private final WeatherDesk weatherDesk;
  private final MeetDesk meetDesk;
  private final ChanceDesk chanceDesk;
  private final DayDesk dayDesk;
  private final EventsDesk eventsDesk;
  private final TrackDesk track;
  private final Attendance attendance;
  private final OrderDesk orderDesk;
  private final BackupDesk backups;
  private final JobQueue clipQueue;
  private final ClipDesk clips;
  private final SessionDesk sessions;
  private final People people;
  private final GrowthDesk growth;

  private Workbench(Database database, Clock clock, ClipDesk.Scan scan, SessionDesk.Cut cut, FilmHands hands, KeptFilms films, Seen seen,
      Beside beside) {
    super(database, clock, seen);
    this.beside = beside;
    this.seen = seen;
    this.scan = scan;
    this.cut = cut;
    this.hands = hands;
    this.films = films;
    this.logbook = new Logbook(reps, athletes, beside);
    this.loadDesk = new LoadDesk(workLog, new PlannedDrills(settings, this::rungs), load, bodies, clock, seen.bodies(), changes);
    this.ladderDesk = new LadderDesk(reps, loadDesk, ladder, clock, changes);
    this.backDesk = new BackDesk(waysBack, care(), workLog, loadDesk, tests(), clock);
    this.advisor = new MarkAdvisor(logbook, clock, this::rungs, changes);
    this.phaseDesk = new PhaseDesk(jumpLog);
    this.longJumpDesk = new LongJumpDesk(longJumps);
    this.runJumpDesk = new RunJumpDesk(runJumps, logbook, clock);
    this.aimDesk = new AimDesk(boardLog);
    this.weatherDesk = new WeatherDesk(weather, reps, athletes);
    this.fullRunDesk = new FullRunDesk(fullRunLog, weather);
    this.approachDesk = new ApproachDesk(runThroughs, jumpLog, longJumps, athletes, aimDesk, weather, growing, seen.bodies());
    this.meetDesk = new MeetDesk(meets, aimDesk);
    this.dayDesk = new DayDesk(meetDays, athletes, approachDesk);
    this.chanceDesk = new ChanceDesk(aimDesk, meets);
    this.eventsDesk = new EventsDesk(boardLog, jumpLog, longJumps, fullRunLog, new LegDesk(reps, longJumps));
    this.track = new TrackDesk(logbook, reps, advisor, new SqlTaps(database), clock);
    this.attendance = new Attendance(athletes, new SqlRoll(database), clock);
    this.orderDesk = new OrderDesk(advisor, reps, loadDesk, clock);
    this.backups =
        new BackupDesk(
            database.folder(), clock, database::copyInto, this::erased, new SqlBackups(database, settings),
            films.elsewhere() ? new FarFilms(films) : null);
    PersonRepository persons = seen.equals(Seen.ALL) ? new SqlPeople(database) : new SeenPeople(new SqlPeople(database), seen.only());
    this.people = new People(persons, clock);
    SqlGrowth heights = new SqlGrowth(database);
    this.growth = seen.equals(Seen.ALL) ? new GrowthDesk(heights, persons, clock, logbook::relearn) : new GrowthDesk(new SeenGrowth(heights, seen.bodies() ? seen.only() : null), persons, clock);
    this.clipQueue = new JobQueue(database, hands);
    SqlSessions sessionRows = new SqlSessions(database, attendance);
    Path clipFolder = database.folder().resolve("clips");
    Path sessionFolder = database.folder().resolve("sessions");
    this.clips =
        new ClipDesk(
            new SqlClips(database), clipQueue, clipFolder, films.clips(), logbook, looks, clock, scan, new Parts(sessionRows, films.sessions()));
    this.sessions =
        new SessionDesk(sessionRows, clipQueue.sessions(), sessionFolder, films.sessions(), Weights.folder(clipFolder), clips, logbook, people, clock, cut);
  }

  /**
   * Opens a data folder; the folder and the database in it are made if they are missing.
   *
   * @param dataDir the folder that holds {@code boundwright.db}
   * @param clock tells which day it is
   * @throws boundwright.quantity.RefusedException if the folder cannot be used or the database is locked, damaged, of another
   *     program or of a newer one; nothing in it was changed then
   */
  public static Workbench open(Path dataDir, Clock clock) {
    return open(DataPlace.of(dataDir), clock);
  }

  /** As {@link #open(Path, Clock)}, with the rows in the folder or in a PostgreSQL. */
  public static Workbench open(DataPlace place, Clock clock) {
    return open(place, clock, Database.Tuning.USUAL);
  }

  /** As {@link #open(Path, Clock)}, with another reader of films. */
  public static Workbench open(Path dataDir, Clock clock, ClipDesk.Scan scan) {
    return open(DataPlace.of(dataDir), clock, scan, CutProcess::cut);
  }

  /** As {@link #open(Path, Clock)}, with another reader of films and another cutter of sessions. */
  public static Workbench open(DataPlace place, Clock clock, ClipDesk.Scan scan, SessionDesk.Cut cut) {
    return open(place, Database.Tuning.USUAL, clock, scan, cut, oneAtATime());
  }

  static Workbench open(DataPlace place, Clock clock, Database.Tuning tuning) {
    return open(place, tuning, clock, (order, progress) -> ScanProcess.scan(order, progress::at), CutProcess::cut, oneAtATime());
  }

  private static Workbench open(DataPlace place, Database.Tuning tuning, Clock clock, ClipDesk.Scan scan, SessionDesk.Cut cut, FilmHands hands) {
    if (place.films() != null && KeptFilms.anyIn(place.folder())) {
      throw new RefusedException(
          "The folder " + place.folder() + " holds films, which are never mixed with those in " + place.films() + ". Leave out --films-in, or bring them there: boundwright move."
              + " Nothing was changed.");
    }
    Database database = Database.open(place, tuning, clock);
    return new Workbench(database, clock, scan, cut, hands, KeptFilms.of(place.folder(), place.films(), clock), Seen.ALL, new Beside());
  }

  /** One scan fills a machine. */
  private static FilmHands oneAtATime() {
    return new FilmHands(1);
  }

  /**
   * The same open store for somebody who sees less of it. It reads no films, and closing it closes nothing: it ends with this one.
   */
  public Workbench seen(Seen less) {
    return new Workbench(database, clock, scan, cut, hands, films, less, beside);
  }

  /** From now on what is learned anew for the whole squad, or from what came late, is learned beside the questions, as a server wants it. */
  public void learnBeside() {
    beside.apart();
  }

  /**
   * Opens the store of another club: a folder of its own inside this one, made if it is missing, and in a PostgreSQL a schema of its own. Its
   * films are read by the hands that read those of this store.
   *
   * @param club its number
   */
  public Workbench club(long club) {
    Workbench other = open(database.place().club(club), Database.Tuning.USUAL, clock, scan, cut, hands);
    if (beside.isApart()) {
      other.learnBeside();
    }
    return other;
  }

  /**
   * Brings backups back into a data folder that nobody has open.
   *
   * @param dataDir the folder; it is made if it is missing
   */
  public static Restore restoring(Path dataDir, Clock clock) {
    return new Restore(dataDir, clock, staged -> Database.open(DataPlace.of(staged), Database.Tuning.USUAL, clock).close(), Schema::make);
  }

  /** The random names of those who were erased. */
  private Set<String> erased() {
    return database.read(h -> h.createQuery("SELECT token FROM erasure").mapTo(String.class).set());
  }

  /** The rungs of everybody as they are now. */
  private Rungs rungs() {
    return ladderDesk.rungs()::applyAsInt;
  }

  /** Judges an athlete's day, so far and with the plan. */
  public LoadDesk loadDesk() {
    return loadDesk;
  }

  /** Asks the gate. */
  public LadderDesk ladderDesk() {
    return ladderDesk;
  }

  /** Begins, shows, steps and ends ways back of single legs. */
  public BackDesk backDesk() {
    return backDesk;
  }

  /** Says how an athlete shares a jump out and where the metres are. */
  public PhaseDesk phaseDesk() {
    return phaseDesk;
  }

  /** Says where an athlete's repeated take-offs fall. */
  public RunJumpDesk runJumpDesk() {
    return runJumpDesk;
  }

  /** Says what an athlete's long jumps tell of angle, speed and where the metres are. */
  public LongJumpDesk longJumpDesk() {
    return longJumpDesk;
  }

  /** Says where the full run-up starts. */
  public ApproachDesk approachDesk() {
    return approachDesk;
  }

  /** Says where to aim at the board. */
  public AimDesk aimDesk() {
    return aimDesk;
  }

  /** Says how far an athlete will jump from more approach steps. */
  public FullRunDesk fullRunDesk() {
    return fullRunDesk;
  }

  /** Describes what was measured in the two events and off each leg. */
  public EventsDesk eventsDesk() {
    return eventsDesk;
  }

  /** Says how a meet stands and what the next attempt is for. */
  public MeetDesk meetDesk() {
    return meetDesk;
  }

  /** Says what the weather of days does to bounding reps. */
  public WeatherDesk weatherDesk() {
    return weatherDesk;
  }

  /** Says how likely an athlete is to reach a standard by a day. */
  public ChanceDesk chanceDesk() {
    return chanceDesk;
  }

  /** Puts the sheet of a meet's day together. */
  public DayDesk dayDesk() {
    return dayDesk;
  }

  /** The coach's clips. They wait until {@link ClipDesk#start} is called, by the one program that shall read them. */
  public ClipDesk clips() {
    return clips;
  }

  /** The coach's films of sessions; they wait as the clips do, and are to be started before them. */
  public SessionDesk sessions() {
    return sessions;
  }

  /** Erases an athlete with everything that is kept of them, films and pictures first: should that fail, they are still in the list. */
  public void erase(long athleteId) {
    sessions.forget(athleteId);
    clips.removeAll(athleteId);
    athletes.erase(athleteId);
  }

  /** Who somebody is, and what was agreed to. */
  public People people() {
    return people;
  }

  /** Says how somebody grows. */
  public GrowthDesk growth() {
    return growth;
  }

  /** Logs reps and learns from them. */
  public Logbook logbook() {
    return logbook;
  }

  /** Logs what happens at the runway and takes it back. */
  public TrackDesk track() {
    return track;
  }

  /** Says who is here on a day, and in which groups. */
  public Attendance attendance() {
    return attendance;
  }

  /** Says what the order of today's session is asked of. */
  public OrderDesk orderDesk() {
    return orderDesk;
  }

  /** Says where the tapes go. */
  public MarkAdvisor advisor() {
    return advisor;
  }

  /** Tells every field of every table. */
  public int tellEverything(Everything.Listener to) {
    return database.tell(Everything.Which.LEAVING, to);
  }

  /** Looks through what is beside a store whose own server looks after its rows. */
  public DataCheck.Report checkData() {
    return new DataCheck(database.folder(), clock, films.elsewhere() ? new FarFilms(films) : null)
        .look(database.counts(), database.read(h -> h.createQuery(DataCheck.FILMS_KEPT).mapTo(String.class).list()));
  }

  /** The folder in which what is sent waits while it arrives, made if it is missing; nothing in it lasts. */
  public Path arriving() {
    return Leftovers.arriving(database.folder());
  }

  /** Backups, by themselves and by hand. */
  public BackupDesk backups() {
    return backups;
  }

  /** The store that is open. */
  Database database() {
    return database;
  }

  @Override
  public void close() {
    if (!seen.equals(Seen.ALL)) {
      return;
    }
    try {
      clipQueue.close();
      beside.close();
    } finally {
      films.close();
      database.close();
    }
  }
}
