using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Mixed;

/// <summary>The reference designs, written out from the R formulas that stand in the reference files.</summary>
internal static class MixedReference
{
    /// <summary>Builds the design of a reference formula on the data of an item; names are those that lme4 gives.</summary>
    public static MixedDesign Design(string item, string formula)
    {
        var data = ReferenceData.Text("mixed", item + ".csv");
        DesignColumn Numeric(string name) => new(name, ReferenceData.Column("mixed", item + ".csv", name));
        var n = data.Values.First().Length;
        var one = new DesignColumn("(Intercept)", DesignColumn.Intercept(n).Values);
        RandomTerm Intercept(string name) => new(name, data[name], [one]);
        RandomTerm Slope(string name, string column, bool correlated = true) => new(name, data[name], [one, Numeric(column)], correlated);

        // R names the columns of a factor by joining name and level.
        IReadOnlyList<DesignColumn> Named(RegressionDesign design) =>
            [.. DesignColumn.Of(design).Select(column => column.Name == RegressionDesign.Intercept ? one : new DesignColumn(column.Name.Replace(": ", "", StringComparison.Ordinal).Replace(" x ", ":", StringComparison.Ordinal), column.Values))];

        return formula switch
        {
            "Reaction ~ Days + (1 | Subject)" => new(Numeric("Reaction"), [one, Numeric("Days")], [Intercept("Subject")]),
            "Reaction ~ Days + (Days | Subject)" => new(Numeric("Reaction"), [one, Numeric("Days")], [Slope("Subject", "Days")]),
            "Reaction ~ Days + (Days || Subject)" => new(Numeric("Reaction"), [one, Numeric("Days")], [Slope("Subject", "Days", correlated: false)]),
            "weight ~ Time * Diet + (Time | Rat)" => new(
                Numeric("weight"), Named(RegressionDesign.WithIntercept(n).Add("Time", Numeric("Time").Values).AddFactor("Diet", data["Diet"]).AddInteraction("Time", "Diet")), [Slope("Rat", "Time")]),
            "height ~ age + (age | Subject)" => new(Numeric("height"), [one, Numeric("age")], [Slope("Subject", "age")]),
            "Yield ~ 1 + (1 | Batch)" => new(Numeric("Yield"), [one], [Intercept("Batch")]),
            "seconds ~ set + (set | athlete)" => new(Numeric("seconds"), [one, Numeric("set")], [Slope("athlete", "set")]),
            "seconds ~ set + (1 | athlete)" => new(Numeric("seconds"), [one, Numeric("set")], [Intercept("athlete")]),

            // lme4 lists terms by falling number of groups, and θ follows that order.
            "score ~ Machine + (1 | Worker) + (1 | Worker:Machine)" => new(
                Numeric("score"), Named(RegressionDesign.WithIntercept(n).AddFactor("Machine", data["Machine"])), [new RandomTerm("Worker:Machine", RandomTerm.Nested("x", data["Worker"], data["Machine"]).Groups, [one]), Intercept("Worker")]),
            "score ~ 1 + (1 | Worker) + (1 | Machine)" => new(Numeric("score"), [one], [Intercept("Worker"), Intercept("Machine")]),
            _ => throw new ArgumentOutOfRangeException(nameof(formula), formula, "Not a formula of the reference pack."),
        };
    }
}
