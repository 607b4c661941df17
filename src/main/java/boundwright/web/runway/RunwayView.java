package boundwright.web.runway;

import java.util.List;

/**
 * The frame of the page; the rest comes with the squad.
 *
 * @param model address of the module that works the marks out
 * @param scripts addresses of the page's scripts, in order
 */
public record RunwayView(String model, List<String> scripts) {}
