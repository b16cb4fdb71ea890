package easewright.mcp;

import io.micrometer.core.instrument.Meter;
import io.micrometer.core.instrument.Tag;
import io.micrometer.core.instrument.config.MeterFilter;
import io.quarkiverse.mcp.server.Tool;
import jakarta.inject.Singleton;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Keeps unknown names requested by assistants out of metrics: the extension would create a meter
 * for each.
 */
@Singleton
class ToolMeters implements MeterFilter {
  private static final Set<String> TOOLS =
      Arrays.stream(FitTools.class.getDeclaredMethods())
          .map(method -> method.getAnnotation(Tool.class))
          .filter(Objects::nonNull)
          .map(Tool::name)
          .collect(Collectors.toSet());

  private static final Set<String> GIVEN = Set.of("resource.uri", "prompt.name");

  @Override
  public Meter.Id map(Meter.Id id) {
    if (!id.getName().startsWith("mcp.")) {
      return id;
    }
    List<Tag> discreet =
        id.getTags().stream()
            .filter(tag -> !GIVEN.contains(tag.getKey()))
            .map(ToolMeters::known)
            .toList();
    return id.replaceTags(discreet);
  }

  private static Tag known(Tag tag) {
    return tag.getKey().equals("tool.name") && !TOOLS.contains(tag.getValue())
        ? Tag.of("tool.name", "other")
        : tag;
  }
}
