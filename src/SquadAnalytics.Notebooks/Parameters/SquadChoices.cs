using System.Globalization;
using SquadAnalytics.Notebooks.Running;

namespace SquadAnalytics.Notebooks.Parameters;

/// <summary>What a notebook's parameters can be chosen from in a squad.</summary>
public static class SquadChoices
{
    /// <summary>The choices for a parameter: boxers by name, dates from the latest; empty where it is not chosen from the squad, or the squad has none.</summary>
    /// <param name="parameter">The parameter.</param>
    /// <param name="squad">The squad.</param>
    public static IReadOnlyList<SquadChoice> Of(NotebookParameter parameter, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(parameter);
        ArgumentNullException.ThrowIfNull(squad);
        return parameter.ChosenFrom switch
        {
            "athlete" => [.. squad.Athletes.OrderBy(athlete => athlete.DisplayName, StringComparer.OrdinalIgnoreCase).Select(athlete => new SquadChoice(athlete.Code, $"{athlete.DisplayName} ({athlete.Code})"))],
            "protocol" => [.. squad.Protocols.Select(protocol => new SquadChoice(protocol.Id, protocol.Name))],
            "block" => [.. squad.Blocks.Select(block => new SquadChoice(block.Id, block.Name))],
            "date" => [.. squad.Sessions.Select(session => session.Date).Distinct().OrderDescending().Select(date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)).Select(date => new SquadChoice(date, date))],
            _ => [],
        };
    }

    /// <summary>Requires that what a notebook takes from its example squad is in this one, so that it does not stop half-way.</summary>
    /// <param name="parameters">The parameters as the notebook has them.</param>
    /// <param name="settings">What was chosen by hand, which the notebook checks itself.</param>
    /// <param name="squad">The squad.</param>
    /// <exception cref="ParameterException">An example's value is not in the squad; the message says what is.</exception>
    public static void RequireIn(IReadOnlyList<NotebookParameter> parameters, IReadOnlyList<ParameterSetting> settings, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        ArgumentNullException.ThrowIfNull(settings);
        foreach (var parameter in parameters.Where(parameter => parameter is { ChosenFrom: not null, Value: not null } && settings.All(setting => setting.Name != parameter.Name)))
        {
            var choices = Of(parameter, squad);
            if (choices.Any(choice => choice.Value == parameter.Value)) continue;
            var known = choices.Count == 0 ? $"which has no {parameter.ChosenFrom} yet" : $"choose one of this squad, such as {parameter.Name}={choices[0].Value}";
            throw new ParameterException($"{parameter.Name} ({parameter.Description}): the notebook's example '{parameter.Value}' is not in this logbook; {known}.");
        }
    }
}
