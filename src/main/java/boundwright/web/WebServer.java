package boundwright.web;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.load.LoadSources;
import boundwright.pairing.Pairing;
import boundwright.quantity.RefusedException;
import boundwright.season.SeasonRules;
import boundwright.season.ladder.PacePrior;
import boundwright.store.Workbench;
import boundwright.technique.TeachingPoint;
import boundwright.web.athlete.AthleteHandler;
import boundwright.web.athlete.EditHandler;
import boundwright.web.athlete.PersonHandler;
import boundwright.web.certificate.OwnCertificate;
import boundwright.web.clips.ClipHandler;
import boundwright.web.clips.ClipLooks;
import boundwright.web.clips.ClipMarksHandler;
import boundwright.web.clips.ClipPairHandler;
import boundwright.web.clips.ClipPictureHandler;
import boundwright.web.clips.ClipsHandler;
import boundwright.web.clips.session.SessionHandler;
import boundwright.web.door.Callers;
import boundwright.web.door.LocalName;
import boundwright.web.door.Reach;
import boundwright.web.door.WrongCodes;
import boundwright.web.files.CardHandler;
import boundwright.web.files.FilesHandler;
import boundwright.web.files.SourcesView;
import boundwright.web.jump.AimHandler;
import boundwright.web.jump.JumpHandler;
import boundwright.web.jump.RunUpHandler;
import boundwright.web.meet.MeetHandler;
import boundwright.web.meet.MeetListHandler;
import boundwright.web.order.OrderHandler;
import boundwright.web.page.Assets;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.phones.PairHandler;
import boundwright.web.phones.PhonesHandler;
import boundwright.web.phones.TrustHandler;
import boundwright.web.runway.RunwayHandler;
import boundwright.web.season.CalendarHandler;
import boundwright.web.season.SeasonDeeds;
import boundwright.web.season.SeasonHandler;
import boundwright.web.season.SeasonPlanHandler;
import boundwright.web.season.input.InputHandler;
import boundwright.web.settings.BackupHandler;
import boundwright.web.settings.LimitsHandler;
import boundwright.web.settings.MeetSettingsHandler;
import boundwright.web.settings.SettingsHandler;
import boundwright.web.squad.ManyHandler;
import boundwright.web.squad.PlanHandler;
import boundwright.web.squad.RollHandler;
import boundwright.web.squad.SquadHandler;
import boundwright.web.squad.TapesHandler;
import boundwright.web.watching.CareHandler;
import boundwright.web.watching.LoadHandler;
import boundwright.web.watching.ReadyHandler;
import boundwright.web.watching.SecondHandler;
import boundwright.web.watching.TechniqueHandler;
import boundwright.web.watching.TestsHandler;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.config.SizeUnit;
import io.javalin.util.JavalinBindException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.jspecify.annotations.Nullable;

/** The running pages. Close it to stop them; the workbench stays open. */
public final class WebServer implements AutoCloseable {
  /** A certificate needs a name, also where none is answered. */
  private static final String USUAL_NAME = "boundwright" + LocalName.ENDING;

  private final Javalin server;
  private final Reach reach;
  private final Pairing pairing;
  private final @Nullable OwnCertificate certificate;
  private final @Nullable LocalName name;

  private WebServer(
      Javalin server, Reach reach, Pairing pairing, @Nullable OwnCertificate certificate, @Nullable LocalName name) {
    this.server = server;
    this.reach = reach;
    this.pairing = pairing;
    this.certificate = certificate;
    this.name = name;
  }

  /**
   * Opens the pages of this workbench over plain http.
   *
   * @param host the address to listen on, {@code 127.0.0.1} unless the coach says otherwise, {@code all} for every one
   * @param port 1 to 65535, or 0 for any that is free
   * @throws RefusedException if the port is in use or the address is not one of this machine's
   */
  public static WebServer start(Workbench bench, String host, int port) {
    return start(bench, new Opening(host, port, false, "", Path.of("")));
  }

  /** Opens the pages of this workbench. */
  public static WebServer start(Workbench bench, Opening opening) {
    return start(bench, opening, new SecureRandom());
  }

  /** As {@link #start(Workbench, Opening)}; {@code random} must be one that cannot be guessed. */
  static WebServer start(Workbench bench, Opening opening, RandomGenerator random) {
    Reach reach = Reach.of(opening.host(), opening.https());
    Listening listening = Listening.on(reach, opening.port());
    Pairing pairing = new Pairing(bench.phones(), bench.clock(), random);
    List<String> names = opening.name().isEmpty() ? List.of() : List.of(opening.name() + LocalName.ENDING);
    @Nullable OwnCertificate certificate =
        reach.https()
            ? OwnCertificate.of(opening.keys(), names.isEmpty() ? List.of(USUAL_NAME) : names, reach.addresses(), bench.clock())
            : null;
    Javalin server = Javalin.create(config -> configure(config, bench, reach, listening, pairing, certificate, random));
    try {
      server.start();
    } catch (JavalinBindException e) {
      server.stop();
      throw listening.inUse(e);
    }
    @Nullable LocalName name = names.isEmpty() || reach.addresses().isEmpty() ? null : LocalName.answer(opening.name(), reach.addresses());
    if (name != null && !name.name().isEmpty()) {
      reach.alsoCalled(name.name());
    }
    return new WebServer(server, reach, pairing, certificate, name);
  }

  /** All routes as they are registered, each as {@code GET /athlete/{id}}. */
  List<String> routes() {
    return server.unsafe.internalRouter.allHttpHandlers().stream()
        .map(p -> p.endpoint)
        .filter(e -> e.method.isHttpMethod())
        .map(e -> e.method + " " + e.path)
        .toList();
  }

  /** By which addresses the pages are reached. */
  public Reach reach() {
    return reach;
  }

  /** Whether phones must trust a new certificate, because the old one did not cover the names or nears its end. */
  public boolean trustAnew() {
    OwnCertificate own = certificate;
    return own != null && own.anew();
  }

  /** Whether a name was wished for and the network does not carry it. */
  public boolean nameless() {
    LocalName wished = name;
    return wished != null && wished.name().isEmpty();
  }

  /** Lets phones in. */
  public Pairing pairing() {
    return pairing;
  }

  /** The port that the pages are on. */
  public int port() {
    return server.port();
  }

  @Override
  public void close() {
    server.stop();
    LocalName leaving = name;
    if (leaving != null) {
      leaving.close();
    }
  }

  private static void configure(
      JavalinConfig config,
      Workbench bench,
      Reach reach,
      Listening listening,
      Pairing pairing,
      @Nullable OwnCertificate certificate,
      RandomGenerator random) {
    listening.add(config.jetty, certificate == null ? null : tls(certificate));
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.maxRequestSize = Gate.MOST_FORM_BYTES;
    config.jetty.multipartConfig.maxFileSize(Gate.MOST_FILE_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxTotalRequestSize(Gate.MOST_FILE_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxInMemoryFileSize((int) Gate.MOST_FILE_BYTES, SizeUnit.BYTES);
    Callers callers = new Callers(pairing);
    Gate gate = new Gate(bench.arriving(), reach, callers, random);
    Assets assets = new Assets();
    Pages pages = new Pages(bench, gate, assets);
    RoutesConfig routes = config.routes;
    routes.before(gate::enter);
    routes.beforeMatched(gate::check);
    routes.get("/assets/<name>", assets::serve);
    squad(routes, bench, pages);
    backup(routes, new BackupHandler(bench, pages, random));
    athlete(routes, bench, pages, gate);
    runway(routes, bench, pages, gate, assets);
    watching(routes, bench, pages, gate);
    data(routes, bench, pages, gate);
    jumpAndMeet(routes, bench, pages, gate, assets);
    clips(routes, bench, pages);
    phones(routes, bench, pages, reach, pairing, callers);
    SeasonDeeds deeds = new SeasonDeeds(bench, random);
    config.events.serverStopping(deeds::close);
    season(routes, bench, pages, deeds, new SeasonHandler(bench, pages, reach, deeds, random));
    TrustHandler trust = new TrustHandler(pages, gate, reach, certificate);
    routes.get("/trust", trust::show);
    routes.get("/trust/authority.crt", trust::file);
    Troubles.say(routes, pages, gate);
  }

  private static SslContextFactory.Server tls(OwnCertificate certificate) {
    SslContextFactory.Server tls = new SslContextFactory.Server();
    tls.setKeyStore(certificate.serving());
    tls.setKeyStorePassword("");
    // one certificate for all names and for a client that asks by address and so names nobody
    tls.setSniRequired(false);
    return tls;
  }

  private static void backup(RoutesConfig routes, BackupHandler backup) {
    routes.get("/settings/backup", backup::show);
    routes.post("/settings/backup", backup::keep);
    routes.post("/settings/backup/now", backup::now);
    routes.post("/settings/backup/away", backup::away);
    routes.post("/settings/backup/seen", backup::seen);
  }

  private static void squad(RoutesConfig routes, Workbench bench, Pages pages) {
    SquadHandler squad = new SquadHandler(bench, pages);
    routes.get("/", squad::squad);
    routes.get("/tapes", new TapesHandler(bench, pages)::tapes);
    RollHandler roll = new RollHandler(bench, pages);
    routes.get("/here", roll::here);
    routes.post("/here", roll::keep);
    routes.get("/group/new", roll::group);
    routes.post("/group/new", roll::keepGroup);
    routes.get("/group/{id}", roll::group);
    routes.post("/group/{id}", roll::keepGroup);
    ManyHandler many = new ManyHandler(bench, pages);
    routes.get("/athletes", many::blank);
    routes.post("/athletes", many::add);
    PlanHandler plan = new PlanHandler(bench, pages);
    routes.get("/plan", plan::show);
    routes.post("/plan", plan::save);
    OrderHandler order = new OrderHandler(bench, pages);
    routes.get("/plan/order", order::show);
    routes.post("/plan/order", order::save);
    SettingsHandler settings = new SettingsHandler(bench, pages);
    routes.get("/settings", settings::show);
    routes.post("/settings", settings::save);
    routes.post("/settings/films", settings::films);
    routes.post("/settings/consent", settings::consent);
    routes.post("/settings/teaching", settings::teaching);
    LimitsHandler limits = new LimitsHandler(bench, pages);
    routes.get("/settings/guard", limits::show);
    routes.post("/settings/guard", limits::guard);
    routes.post("/settings/gate", limits::gate);
    routes.post("/settings/season", limits::season);
  }

  private static void athlete(RoutesConfig routes, Workbench bench, Pages pages, Gate gate) {
    EditHandler edit = new EditHandler(bench, pages, gate);
    routes.get("/athlete/new", edit::blank);
    routes.post("/athlete/new", edit::add);
    routes.get("/athlete/{id}/edit", edit::edit);
    routes.post("/athlete/{id}/edit", edit::save);
    routes.post("/athlete/{id}/test", edit::addTest);
    routes.post("/athlete/{id}/test/{number}/remove", edit::removeTest);
    routes.post("/athlete/{id}/runup", edit::addRunUp);
    routes.post("/athlete/{id}/runup/{number}/remove", edit::removeRunUp);
    routes.post("/athlete/{id}/erase", edit::erase);
    PersonHandler person = new PersonHandler(bench, edit);
    routes.post("/athlete/{id}/person", person::keep);
    routes.post("/athlete/{id}/consent", person::say);
    routes.post("/athlete/{id}/withdraw", person::withdraw);
    AthleteHandler athlete = new AthleteHandler(bench, pages, gate);
    routes.get("/athlete/{id}", athlete::show);
    routes.get("/athlete/{id}/marks", athlete::show);
    routes.post("/athlete/{id}/log", athlete::log);
    routes.post("/athlete/{id}/undo/{rep}", athlete::undo);
    routes.post("/athlete/{id}/override", athlete::override);
  }

  private static void runway(RoutesConfig routes, Workbench bench, Pages pages, Gate gate, Assets assets) {
    RunwayHandler runway = new RunwayHandler(bench, pages, gate, assets);
    routes.get("/runway", runway::show);
    routes.get("/runway/parcel", runway::parcel);
    routes.post("/runway/bring", runway::bring);
  }

  private static void watching(RoutesConfig routes, Workbench bench, Pages pages, Gate gate) {
    CareHandler care = new CareHandler(bench, pages, gate);
    routes.get("/athlete/{id}/care", care::show);
    routes.post("/athlete/{id}/pain", care::pain);
    routes.post("/athlete/{id}/pain/{number}/settled", care::settle);
    routes.post("/athlete/{id}/hold", care::hold);
    routes.post("/athlete/{id}/hold/{number}/end", care::endHold);
    routes.post("/athlete/{id}/growing", care::growing);
    routes.post("/athlete/{id}/rating", care::rating);
    ReadyHandler ready = new ReadyHandler(bench, pages, gate);
    routes.get("/watch", ready::watch);
    routes.get("/athlete/{id}/ready", ready::show);
    routes.post("/athlete/{id}/ready", ready::decide);
    LoadHandler load = new LoadHandler(bench, pages, gate);
    routes.get("/athlete/{id}/load", load::show);
    routes.post("/athlete/{id}/work", load::add);
    routes.post("/athlete/{id}/work/{number}/remove", load::remove);
    routes.post("/athlete/{id}/last-week", load::lastWeek);
    routes.post("/athlete/{id}/season", load::season);
    TechniqueHandler technique = new TechniqueHandler(bench, pages, gate);
    routes.get("/athlete/{id}/technique", technique::show);
    routes.post("/athlete/{id}/fault", technique::addFault);
    routes.post("/athlete/{id}/fault/{key}/remove", technique::removeFault);
    SecondHandler second = new SecondHandler(bench, pages, gate);
    routes.get("/athlete/{id}/second", second::show);
    routes.post("/athlete/{id}/second", second::keep);
    TestsHandler tests = new TestsHandler(bench, pages, gate);
    routes.get("/athlete/{id}/tests", tests::show);
    routes.post("/athlete/{id}/tests", tests::add);
    routes.post("/athlete/{id}/score/{number}/remove", tests::remove);
  }

  private static void data(RoutesConfig routes, Workbench bench, Pages pages, Gate gate) {
    FilesHandler files = new FilesHandler(bench, pages, gate);
    routes.get("/import", files::show);
    routes.post("/import", files::read);
    routes.post("/import/take", files::take);
    routes.post("/import/back", files::back);
    routes.post("/import/look", files::look);
    routes.post("/import/move", files::move);
    routes.get("/export.csv", files::export);
    CardHandler card = new CardHandler(bench, pages);
    routes.get("/card", card::squad);
    routes.get("/card.pdf", card::pdf);
    routes.get("/athlete/{id}/card", card::athlete);
    routes.get("/athlete/{id}/report.pdf", card::report);
    List<Source> sources = new ArrayList<>(Sources.ALL);
    sources.add(TeachingPoint.SOURCE);
    sources.addAll(LoadSources.ALL);
    sources.addAll(boundwright.readiness.Gate.SOURCES);
    sources.addAll(SeasonRules.SOURCES);
    sources.add(PacePrior.SOURCE);
    routes.get("/sources", ctx -> pages.show(ctx, 200, "files/sources", "Sources and cautions", "", new SourcesView(List.copyOf(sources))));
  }

  private static void jumpAndMeet(RoutesConfig routes, Workbench bench, Pages pages, Gate gate, Assets assets) {
    JumpHandler jump = new JumpHandler(bench, pages, gate);
    routes.get("/athlete/{id}/jump", jump::show);
    routes.post("/athlete/{id}/jump", jump::keep);
    routes.post("/athlete/{id}/jump/{number}/remove", jump::remove);
    RunUpHandler runUp = new RunUpHandler(bench, pages, gate);
    routes.get("/athlete/{id}/run-up", runUp::show);
    routes.post("/athlete/{id}/run-up", runUp::keep);
    routes.post("/athlete/{id}/run-up/{number}/remove", runUp::remove);
    AimHandler aim = new AimHandler(bench, pages, gate);
    routes.get("/athlete/{id}/aim", aim::show);
    routes.post("/athlete/{id}/aim", aim::keep);
    routes.post("/athlete/{id}/aim/{number}/remove", aim::remove);
    MeetListHandler meets = new MeetListHandler(bench, pages, gate);
    routes.get("/meet", meets::list);
    routes.post("/meet", meets::add);
    MeetSettingsHandler settings = new MeetSettingsHandler(bench, pages);
    routes.get("/settings/meet", settings::show);
    routes.post("/settings/meet", settings::save);
    routes.get("/meet/{id}/edit", meets::edit);
    routes.post("/meet/{id}/edit", meets::save);
    routes.post("/meet/{id}/list", meets::enter);
    routes.post("/meet/{id}/list/{number}/withdraw", meets::withdraw);
    routes.post("/meet/{id}/remove", meets::remove);
    MeetHandler meet = new MeetHandler(bench, pages, gate);
    routes.get("/meet/{id}", meet::show);
    routes.post("/meet/{id}/attempt", meet::keep);
    routes.post("/meet/{id}/undo/{number}", meet::undo);
    routes.post("/meet/{id}/beside/{number}", meet::choose);
    routes.post("/meet/{id}/attempt/{number}/remove", meet::removeAttempt);
    // at the root, so that it may answer for the pages of the meets
    routes.get("/worker.js", assets::worker);
  }

  private static void clips(RoutesConfig routes, Workbench bench, Pages pages) {
    // before the clips: session is no clip's number
    new SessionHandler(bench, pages).add(routes);
    ClipLooks looks = new ClipLooks(bench::clips);
    ClipsHandler list = new ClipsHandler(bench, pages, looks);
    routes.get(Gate.FILMS, list::list);
    routes.post(Gate.FILMS, list::take);
    routes.get("/clips/compare", new ClipPairHandler(bench, pages, looks, list)::show);
    routes.get("/clips/{id}/row", list::row);
    routes.get("/clips/{id}/still/{frame}", list::still);
    routes.post("/clips/{id}/cancel", list::cancel);
    routes.post("/clips/{id}/retry", list::retry);
    routes.post("/clips/{id}/remove", list::remove);
    ClipHandler clip = new ClipHandler(bench, pages, looks, list);
    routes.get("/clips/{id}", clip::show);
    routes.post("/clips/{id}/correct", clip::correct);
    routes.post("/clips/{id}/undo", clip::undo);
    routes.post("/clips/{id}/slow", clip::slow);
    routes.post("/clips/{id}/log", clip::log);
    routes.post("/clips/{id}/agree", clip::agree);
    routes.post("/clips/{id}/unlog", clip::unlog);
    ClipPictureHandler pictures = new ClipPictureHandler(bench, pages, looks, list);
    routes.get("/clips/{id}/whole", pictures::whole);
    routes.get("/clips/{id}/whole.jpg", pictures::photo);
    routes.get("/clips/{id}/whole.png", pictures::savedWhole);
    routes.get("/clips/{id}/frame/{frame}", pictures::savedFrame);
    routes.get("/clips/{id}/play", pictures::play);
    ClipMarksHandler marks = new ClipMarksHandler(bench, pages, looks, list);
    routes.get("/clips/{id}/marks", marks::show);
    routes.post("/clips/{id}/marks", marks::save);
    routes.get("/clips/{id}/box", marks::box);
    routes.post("/clips/{id}/box", marks::saveBox);
  }

  private static void season(RoutesConfig routes, Workbench bench, Pages pages, SeasonDeeds deeds, SeasonHandler season) {
    new SeasonPlanHandler(bench, pages, season, deeds).add(routes);
    new InputHandler(bench, pages, deeds.desk(), season::asked).add(routes);
    routes.get("/season", season::show);
    routes.post("/season/file", season::file);
    routes.get("/season/example.json", season::example);
    routes.get("/season/file.json", season::saved);
    routes.get("/season/wall.pdf", season::wall);
    routes.get("/season/week", season::week);
    routes.get("/season/week.pdf", season::weekPdf);
    routes.post("/season/calendar", season::renew);
    routes.post("/season/calendar/shut", season::shut);
    routes.get("/calendar/{secret}", new CalendarHandler(bench)::read);
  }

  private static void phones(
      RoutesConfig routes, Workbench bench, Pages pages, Reach reach, Pairing pairing, Callers callers) {
    PhonesHandler phones = new PhonesHandler(bench, pages, reach, pairing);
    routes.get("/phones", phones::show);
    routes.post("/phones/code", phones::code);
    routes.post("/phones/code/withdraw", phones::withdraw);
    routes.post("/phones/revoke-all", phones::revokeAll);
    routes.post("/phones/{id}/allow", phones::allow);
    routes.post("/phones/{id}/revoke", phones::revoke);
    PairHandler pair = new PairHandler(pages, pairing, callers, new WrongCodes(bench.clock()));
    routes.get("/pair/{code}", pair::show);
    routes.post("/pair/{code}", pair::pair);
  }
}
