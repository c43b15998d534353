using EolSequencer.Model.Ports;

namespace EolSequencer.Model.Tests.Ports;

/// <summary>Which answers a prompt takes is asked by scripts and screens alike; every pair stands here.</summary>
public sealed class AnswerFitTests
{
    private static readonly Answer[] Answers =
    [
        new Answer.Confirmed(), new Answer.Ok(), new Answer.NotOk(null), new Answer.Text("a"),
        new Answer.PassedOver("why"), new Answer.Stop("why"), new Answer.Again(), new Answer.GoOn(),
    ];

    [Theory]
    [InlineData(PromptKind.Act, "PassedOver Stop")]
    [InlineData(PromptKind.Confirm, "Confirmed PassedOver Stop")]
    [InlineData(PromptKind.Judge, "Ok NotOk PassedOver Stop")]
    [InlineData(PromptKind.Enter, "Text PassedOver Stop")]
    [InlineData(PromptKind.Scan, "Text PassedOver Stop")]
    [InlineData(PromptKind.Choose, "Text PassedOver Stop")]
    [InlineData(PromptKind.Caution, "Confirmed Stop")]
    [InlineData(PromptKind.Decide, "Stop Again GoOn")]
    public void A_prompt_takes_these_answers_and_no_others(PromptKind kind, string taken) =>
        Assert.Equal(taken.Split(' '), Answers.Where(answer => kind.Takes(answer)).Select(answer => answer.GetType().Name));
}
