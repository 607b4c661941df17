package boundwright.web;

import boundwright.account.Accounts;
import boundwright.account.Bonds;
import boundwright.account.Passkeys;
import boundwright.athlete.growth.GrowthSources;
import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.load.LoadSources;
import boundwright.pairing.Pairing;
import boundwright.season.SeasonRules;
import boundwright.season.ladder.PacePrior;
import boundwright.store.Workbench;
import boundwright.store.transfer.Transfers;
import boundwright.technique.TeachingPoint;
import boundwright.web.account.AccountsHandler;
import boundwright.web.account.DepartmentHandler;
import boundwright.web.account.LoginHandler;
import boundwright.web.account.MeHandler;
import boundwright.web.account.PasskeyHandler;
import boundwright.web.account.TransferHandler;
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
import boundwright.web.department.Department;
import boundwright.web.door.Callers;
import boundwright.web.door.Notes;
import boundwright.web.door.Reach;
import boundwright.web.door.WrongCodes;
import boundwright.web.files.CardHandler;
import boundwright.web.files.FilesHandler;
import boundwright.web.files.ReportHandler;
import boundwright.web.files.SourcesView;
import boundwright.web.licences.LicencesView;
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
import boundwright.web.settings.CloseHandler;
import boundwright.web.settings.LimitsHandler;
import boundwright.web.settings.SettingsHandler;
import boundwright.web.squad.ManyHandler;
import boundwright.web.squad.PlanHandler;
import boundwright.web.squad.RollHandler;
import boundwright.web.squad.FirstPage;
import boundwright.web.squad.SquadHandler;
import boundwright.web.squad.TapesHandler;
import boundwright.web.watching.BackHandler;
import boundwright.web.watching.CareHandler;
import boundwright.web.watching.GrowthHandler;
import boundwright.web.watching.LoadHandler;
import boundwright.web.watching.ReadyHandler;
import boundwright.web.watching.SecondHandler;
import boundwright.web.watching.TechniqueHandler;
import boundwright.web.watching.TestsHandler;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.config.SizeUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * The pages of one club as one kind of reader sees them: all routes over one workbench. Clubs and readers who see less have routes of
 * their own, so that a page cannot show what its workbench does not hold.
 */
final class House implements AutoCloseable {
  private final Common common;
  private final Workbench bench;
  private final SeasonDeeds deeds;

  /**
   * What all houses of a server share.
   *
   * @param first the workbench of the first club, which keeps accounts and phones
   * @param department whose logins are taken, or none
   * @param random a generator that cannot be guessed
   * @param closing counted down when a page closes the program
   * @param transfers athletes change clubs
   * @param begun the front page of the first club if it is being worked out already
   */
  record Common(
      Workbench first, Reach reach, Pairing pairing, Accounts accounts, Passkeys passkeys, Bonds bonds, Department department, Callers callers, Notes notes,
      WrongCodes wrong, Assets assets, @Nullable OwnCertificate certificate, RandomGenerator random, CountDownLatch closing,
      Transfers transfers, @Nullable FirstPage begun) {}

  House(Common common, Workbench bench) {
    this.common = common;
    this.bench = bench;
    this.deeds = new SeasonDeeds(bench, common.random());
  }

  /** The limits of what is sent, and all routes. */
  void configure(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.maxRequestSize = Gate.MOST_FORM_BYTES;
    config.jetty.multipartConfig.maxFileSize(Gate.MOST_FILE_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxTotalRequestSize(Gate.MOST_FILE_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxInMemoryFileSize((int) Gate.MOST_FILE_BYTES, SizeUnit.BYTES);
    Reach reach = common.reach();
    Assets assets = common.assets();
    RandomGenerator random = common.random();
    Gate gate = new Gate(bench.arriving(), reach, common.callers(), common.notes(), random);
    Pages pages = new Pages(bench, gate, assets);
    RoutesConfig routes = config.routes;
    routes.before(gate::enter);
    routes.beforeMatched(gate::check);
    routes.afterMatched(gate::note);
    routes.get("/assets/<name>", assets::serve);
    routes.get("/health", ctx -> ctx.result("ok"));
    routes.post("/settings/close", new CloseHandler(pages, common.closing())::close);
    AccountsHandler accounts = accounts(routes, pages, gate);
    squad(routes, pages);
    backup(routes, new BackupHandler(bench, pages, random));
    athlete(routes, pages, gate, accounts);
    runway(routes, bench, pages, gate, assets);
    watching(routes, bench, pages, gate);
    data(routes, bench, pages, gate);
    JumpRoutes.add(routes, bench, pages, gate, assets);
    clips(routes, bench, pages);
    phones(routes, pages, gate);
    season(routes, bench, pages, deeds, new SeasonHandler(bench, pages, reach, deeds, random));
    Troubles.say(routes, pages, gate);
  }

  @Override
  public void close() {
    deeds.close();
  }

  private AccountsHandler accounts(RoutesConfig routes, Pages pages, Gate gate) {
    Common c = common;
    LoginHandler login = new LoginHandler(pages, c.accounts(), c.callers(), c.notes(), c.reach(), c.wrong(), c.department());
    login.add(routes);
    new PasskeyHandler(gate, c.accounts(), c.passkeys(), c.callers(), c.notes(), c.reach(), c.department()).add(routes);
    new DepartmentHandler(pages, gate, c.department(), c.bonds(), login, c.passkeys(), c.callers(), c.notes(), c.reach()).add(routes);
    new MeHandler(pages, gate, c.accounts(), c.passkeys(), c.bonds(), c.department(), c.first().phones(), c.reach(), bench.clock()).add(routes);
    AccountsHandler accounts = new AccountsHandler(bench, pages, gate, c.accounts(), c.reach(), c.transfers());
    accounts.add(routes);
    return accounts;
  }

  private void phones(RoutesConfig routes, Pages pages, Gate gate) {
    PhonesHandler phones = new PhonesHandler(common.first().phones(), bench.clock(), gate, pages, common.reach(), common.pairing());
    routes.get("/phones", phones::show);
    routes.post("/phones/code", phones::code);
    routes.post("/phones/code/withdraw", phones::withdraw);
    routes.post("/phones/revoke-all", phones::revokeAll);
    routes.post("/phones/{id}/allow", phones::allow);
    routes.post("/phones/{id}/revoke", phones::revoke);
    PairHandler pair = new PairHandler(pages, common.pairing(), common.callers(), common.wrong(), common.reach());
    routes.get("/pair/{code}", pair::show);
    routes.post("/pair/{code}", pair::pair);
    TrustHandler trust = new TrustHandler(pages, gate, common.reach(), common.certificate());
    routes.get("/trust", trust::show);
    routes.get("/trust/authority.crt", trust::file);
  }

  private static void backup(RoutesConfig routes, BackupHandler backup) {
    routes.get("/settings/backup", backup::show);
    routes.post("/settings/backup", backup::keep);
    routes.post("/settings/backup/now", backup::now);
    routes.post("/settings/backup/away", backup::away);
    routes.post("/settings/backup/seen", backup::seen);
  }

  private void squad(RoutesConfig routes, Pages pages) {
    SquadHandler squad = new SquadHandler(bench, pages, bench == common.first() ? common.begun() : null);
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

  private void athlete(RoutesConfig routes, Pages pages, Gate gate, AccountsHandler accounts) {
    EditHandler edit = new EditHandler(bench, pages, gate, common.first().accounts(), common.transfers());
    routes.get("/athlete/new", edit::blank);
    routes.post("/athlete/new", edit::add);
    routes.get("/athlete/{id}/edit", edit::edit);
    routes.post("/athlete/{id}/edit", edit::save);
    routes.post("/athlete/{id}/test", edit::addTest);
    routes.post("/athlete/{id}/test/{number}/remove", edit::removeTest);
    routes.post("/athlete/{id}/runup", edit::addRunUp);
    routes.post("/athlete/{id}/runup/{number}/remove", edit::removeRunUp);
    routes.post("/athlete/{id}/erase", edit::erase);
    new TransferHandler(bench, gate, common.transfers(), edit, accounts).add(routes);
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
    GrowthHandler growth = new GrowthHandler(bench, pages, gate);
    routes.get("/athlete/{id}/growth", growth::show);
    routes.post("/athlete/{id}/growth", growth::add);
    routes.post("/athlete/{id}/growth/{number}/remove", growth::remove);
    BackHandler back = new BackHandler(bench, pages, gate);
    routes.get("/athlete/{id}/back", back::show);
    routes.post("/athlete/{id}/back", back::begin);
    routes.post("/athlete/{id}/back/{number}/step", back::step);
    routes.post("/athlete/{id}/back/{number}/end", back::end);
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
    ReportHandler report = new ReportHandler(bench, pages);
    routes.get("/athlete/{id}/for/{reader}", report::athlete);
    routes.get("/athlete/{id}/for/{reader}/report.pdf", report::athletePdf);
    routes.get("/squad-report", report::club);
    routes.get("/squad-report/report.pdf", report::clubPdf);
    List<Source> sources = new ArrayList<>(Sources.ALL);
    sources.add(TeachingPoint.SOURCE);
    sources.addAll(LoadSources.ALL);
    sources.addAll(GrowthSources.ALL);
    sources.addAll(boundwright.readiness.Gate.SOURCES);
    sources.addAll(SeasonRules.SOURCES);
    sources.add(PacePrior.SOURCE);
    routes.get("/licences", ctx -> pages.show(ctx, 200, "licences/licences", "Licences", "", LicencesView.now()));
    routes.get("/sources", ctx -> pages.show(ctx, 200, "files/sources", "Sources and cautions", "", new SourcesView(List.copyOf(sources))));
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
}
