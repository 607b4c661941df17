package boundwright.web.squad;

import java.util.List;

/**
 * A list of names to add.
 *
 * @param list what is still in the field
 * @param level name of the level of lines that say none
 * @param group name of the group they join, or empty
 * @param added names that were added
 * @param there names that were there already and were left as they are
 * @param refused lines that could not be read, with the reason
 */
public record ManyView(String list, String level, String group, List<String> added, List<String> there, List<String> refused) {}
