package boundwright.web;

import boundwright.jump.Event;
import boundwright.store.Workbench;
import boundwright.web.jump.AimHandler;
import boundwright.web.jump.FullRunHandler;
import boundwright.web.jump.JumpHandler;
import boundwright.web.jump.LongJumpHandler;
import boundwright.web.jump.RunUpHandler;
import boundwright.web.jump.TakeOffsHandler;
import boundwright.web.jump.WeatherHandler;
import boundwright.web.meet.MeetDayHandler;
import boundwright.web.meet.MeetHandler;
import boundwright.web.meet.MeetListHandler;
import boundwright.web.page.Assets;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.settings.MeetSettingsHandler;
import io.javalin.config.RoutesConfig;

/** The pages of jumps and meets. */
final class JumpRoutes {
  private JumpRoutes() {}

  static void add(RoutesConfig routes, Workbench bench, Pages pages, Gate gate, Assets assets) {
    JumpHandler jump = new JumpHandler(bench, pages, gate);
    routes.get("/athlete/{id}/jump", jump::show);
    routes.post("/athlete/{id}/jump", jump::keep);
    routes.post("/athlete/{id}/jump/{number}/remove", jump::remove);
    LongJumpHandler longJump = new LongJumpHandler(bench, pages, gate);
    routes.get("/athlete/{id}/long-jump", longJump::show);
    routes.post("/athlete/{id}/long-jump", longJump::keep);
    routes.post("/athlete/{id}/long-jump/{number}/remove", longJump::remove);
    TakeOffsHandler takeOffs = new TakeOffsHandler(bench, pages, gate);
    routes.get("/athlete/{id}/take-offs", takeOffs::show);
    routes.post("/athlete/{id}/take-offs", takeOffs::keep);
    routes.post("/athlete/{id}/take-offs/{number}/remove", takeOffs::remove);
    ofEvent(routes, "/athlete/{id}/long-jump", bench, pages, gate, Event.LONG_JUMP);
    ofEvent(routes, "/athlete/{id}", bench, pages, gate, Event.TRIPLE_JUMP);
    FullRunHandler fullRun = new FullRunHandler(bench, pages, gate);
    routes.get("/athlete/{id}/full-run", fullRun::show);
    routes.post("/athlete/{id}/full-run", fullRun::keep);
    routes.post("/athlete/{id}/full-run/{number}/remove", fullRun::remove);
    WeatherHandler weather = new WeatherHandler(bench, pages);
    routes.get("/weather", weather::show);
    routes.post("/weather", weather::keep);
    routes.post("/weather/{day}/remove", weather::remove);
    meets(routes, bench, pages, gate);
    // at the root, so that it may answer for the pages of the meets
    routes.get("/worker.js", assets::worker);
  }

  /** Run-up and aim of one event. */
  private static void ofEvent(RoutesConfig routes, String under, Workbench bench, Pages pages, Gate gate, Event event) {
    RunUpHandler runUp = new RunUpHandler(bench, pages, gate, event);
    routes.get(under + "/run-up", runUp::show);
    routes.post(under + "/run-up", runUp::keep);
    routes.post(under + "/run-up/{number}/remove", runUp::remove);
    AimHandler aim = new AimHandler(bench, pages, gate, event);
    routes.get(under + "/aim", aim::show);
    routes.post(under + "/aim", aim::keep);
    routes.post(under + "/aim/{number}/remove", aim::remove);
  }

  private static void meets(RoutesConfig routes, Workbench bench, Pages pages, Gate gate) {
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
    MeetDayHandler meetDay = new MeetDayHandler(bench, pages);
    routes.get("/meet/{id}/day", meetDay::show);
    routes.post("/meet/{id}/day", meetDay::keep);
    routes.get("/meet/{id}/day.pdf", meetDay::pdf);
  }
}
