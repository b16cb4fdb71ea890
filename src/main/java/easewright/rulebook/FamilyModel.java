package easewright.rulebook;

import java.util.List;
import org.drools.model.EntryPoint;
import org.drools.model.Global;
import org.drools.model.Model;
import org.drools.model.Query;
import org.drools.model.Rule;
import org.drools.model.TypeMetaData;

/** Some of the rules of a compiled model, with all else it holds. */
record FamilyModel(Model whole, List<Rule> rules) implements Model {
  @Override
  public List<Rule> getRules() {
    return rules;
  }

  @Override
  public String getName() {
    return whole.getName();
  }

  @Override
  public String getPackageName() {
    return whole.getPackageName();
  }

  @Override
  public List<Global> getGlobals() {
    return whole.getGlobals();
  }

  @Override
  public List<Query> getQueries() {
    return whole.getQueries();
  }

  @Override
  public List<TypeMetaData> getTypeMetaDatas() {
    return whole.getTypeMetaDatas();
  }

  @Override
  public List<EntryPoint> getEntryPoints() {
    return whole.getEntryPoints();
  }
}
